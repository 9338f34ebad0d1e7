-- check, conversion, export: instructions
function attack(fiche)
  local t = {}
  local s = ('\0'):rep(100000)
  for i = 1, 30 do t[i] = s .. (i % 7) end
  while true do table.sort(t) end
end
