-- export: instructions
function attack(fiche)
  local s = ('x'):rep(60000) local t = {} for i = 1, 100 do t[i] = {name = 'f' .. i, bytes = s} end while true do t = t end
end
