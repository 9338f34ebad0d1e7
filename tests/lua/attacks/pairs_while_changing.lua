-- check, conversion, export: harmless
function attack(fiche)
  local t = {a = 1, b = 2, c = 3}
  for k in pairs(t) do t[k] = nil t[k .. 'x'] = 1 end
  local n = 0
  for k in pairs(t) do n = n + 1 end
  assert(n == 3)
end
