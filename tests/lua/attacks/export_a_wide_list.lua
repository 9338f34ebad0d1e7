-- export: error "more than 100 files"
function attack(fiche)
  local t = {} for i = 1, 5000 do t[i] = {name = 'a' .. i, bytes = ''} end return t
end
