-- export: error "has no name"
function attack(fiche)
  local t = {} t[1] = t return t
end
