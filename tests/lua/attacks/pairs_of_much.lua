-- check, conversion, export: instructions
function attack(fiche)
  local t = {} for i = 1, 5000 do t[i] = i end while true do for k in pairs(t) do break end end
end
