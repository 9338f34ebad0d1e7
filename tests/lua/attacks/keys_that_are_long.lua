-- check, conversion, export: instructions
function attack(fiche)
  local a, b = ('k'):rep(1000000), ('k'):rep(1000000) .. ''
  local t = {[a] = 1}
  for i = 1, 300 do local x = t[b] end
  while true do pairs({[a] = 1, [b .. '1'] = 2, [b .. '2'] = 3}) end
end
