-- check, conversion, export: instructions
function attack(fiche)
  while true do for x in ('abc'):gmatch('') do end end
end
