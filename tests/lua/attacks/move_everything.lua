-- check, conversion, export: instructions
function attack(fiche)
  table.move({}, 1, math.maxinteger - 1, 2)
end
