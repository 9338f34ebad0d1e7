-- check, conversion, export: instructions
function attack(fiche)
  local t = {}
  local s = ('x'):rep(100000)
  for i = 1, 40 do t[i] = s .. (i % 7) end
  while true do table.sort(t) end
end
