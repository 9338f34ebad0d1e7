-- check, conversion, export: instructions
function attack(fiche)
  local t = {} for i = 1, 2000 do t[i] = 'word' .. i end while true do tamis.nearest('wrod', t) end
end
