-- check, conversion, export: instructions
function attack(fiche)
  return table.unpack({}, math.mininteger, math.maxinteger)
end
