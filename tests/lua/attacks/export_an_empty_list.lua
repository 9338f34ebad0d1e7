-- export: error "an empty list"
function attack(fiche)
  return {}
end
