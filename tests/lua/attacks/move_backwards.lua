-- check, conversion, export: harmless
function attack(fiche)
  local t = table.move({1, 2, 3}, 1, 3, 2)
  assert(t[2] == 1 and t[4] == 3)
  table.move({}, math.mininteger, math.mininteger + 2, 5)
  table.move({}, math.maxinteger, math.mininteger, 5)
end
