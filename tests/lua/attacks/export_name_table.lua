-- export: error "has no name"
function attack(fiche)
  return {{name = {}, bytes = 'x'}}
end
