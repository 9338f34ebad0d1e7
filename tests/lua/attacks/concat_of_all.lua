-- check, conversion, export: instructions
function attack(fiche)
  return table.concat({}, '', 1, math.maxinteger)
end
