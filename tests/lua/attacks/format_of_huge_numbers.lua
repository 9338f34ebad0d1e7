-- check, conversion, export: harmless
function attack(fiche)
  local s = ('%99.99f|%-99.99f|%99.99e|%+99.99g|%a'):format(1e308, -1e308, 1e-308, 1/0, 1e308)
  assert(#s > 500)
  assert(('%d'):format(math.mininteger) == '-9223372036854775808')
  return s
end
