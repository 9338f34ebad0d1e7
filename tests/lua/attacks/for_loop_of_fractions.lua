-- check, conversion, export: instructions
function attack(fiche)
  for x = 0, 1, 1e-300 do end
end
