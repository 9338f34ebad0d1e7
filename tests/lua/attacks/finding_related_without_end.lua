-- check, conversion, export: error "related places"
function attack(fiche)
  local finding = fiche:say(nil, 'x') while true do finding:also(fiche.root, 'y') end
end
