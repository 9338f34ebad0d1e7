-- check, conversion, export: instructions
function attack(fiche)
  while true do print(('x'):rep(500)) end
end
