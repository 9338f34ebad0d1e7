-- check, conversion, export: harmless
function attack(fiche)
  fiche:say(nil, ('x'):rep(1000000), ('y'):rep(1000000))
end
