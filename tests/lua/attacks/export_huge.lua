-- export: memory
function attack(fiche)
  local s = ('x'):rep(5000000) local t = {} for i = 1, 90 do t[i] = {name = 'f' .. i, bytes = s .. i} end return t
end
