-- export: error "has no name"
function attack(fiche)
  local t = {name = 'a', bytes = 'b'} for i = 1, 10000 do t = {t} end return t
end
