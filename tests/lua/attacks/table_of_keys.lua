-- check, conversion, export: memory
function attack(fiche)
  local t = {} local i = 0 while true do i = i + 1 t['k' .. i] = true end
end
