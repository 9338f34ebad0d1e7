-- check, conversion, export: instructions
function attack(fiche)
  local t = {}
  for i = 1, 30000 do t['k' .. i] = i end
  local i = 0
  while true do i = i + 1 t['k' .. i] = nil t['n' .. i % 100] = i end
end
