-- export: instructions
function attack(fiche)
  local s = ('x'):rep(1000000) local t = {} for i = 1, 90 do t[i] = {name = 'f' .. i, bytes = s} end return t
end
