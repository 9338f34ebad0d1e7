-- check, conversion, export: harmless
function attack(fiche)
  local a = tamis.amount('1 kg')
  for _, wild in ipairs({0, -1, 0/0, 1/0, 1e308, 1e-308, math.mininteger, math.maxinteger, '5', a}) do
    pcall(function() return a * wild end)
    pcall(function() return a / wild end)
    pcall(function() return a + wild end)
    pcall(function() return a < wild end)
    pcall(function() return wild - a end)
  end
  assert(not pcall(function() while true do a = a * 1000 end end))
end
