-- check, conversion, export: harmless
function attack(fiche)
  local t = {}
  for i = 1, 500 do t[i] = (i * 7919) % 501 end
  table.sort(t, function() return true end)
  table.sort(t, function() return false end)
  local turn = false
  table.sort(t, function() turn = not turn return turn end)
  assert(#t == 500)
end
