-- check, conversion, export: error "more than 4 MB"
function attack(fiche)
  for i = 1, 900 do
    local finding = fiche:say(nil, ('x'):rep(2000), ('y'):rep(2000))
    for j = 1, 20 do finding:also(fiche.root, ('z'):rep(2000)) end
  end
end
