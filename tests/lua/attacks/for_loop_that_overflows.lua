-- check, conversion, export: instructions
function attack(fiche)
  for i = math.maxinteger - 1, math.maxinteger do for j = math.mininteger, math.maxinteger, 1 do end end
end
