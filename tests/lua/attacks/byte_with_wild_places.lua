-- check, conversion, export: harmless
function attack(fiche)
  assert(select('#', ('abc'):byte(math.mininteger, math.maxinteger)) == 3)
  assert(select('#', ('abc'):byte(math.maxinteger, math.mininteger)) == 0)
  assert(select('#', (''):byte(1, -1)) == 0)
  return ('abc'):sub(math.mininteger, math.maxinteger)
end
