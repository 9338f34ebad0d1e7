-- check, conversion, export: harmless
function attack(fiche)
  assert(table.concat({[math.maxinteger] = 'x'}, ',', math.maxinteger, math.maxinteger) == 'x')
  assert(table.concat({[math.mininteger] = 'y'}, ',', math.mininteger, math.mininteger) == 'y')
  assert(table.concat({}, ',', math.maxinteger, math.mininteger) == '')
end
