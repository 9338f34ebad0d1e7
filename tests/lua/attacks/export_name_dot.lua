-- export: error "is no plain file name"
function attack(fiche)
  return {{name = '.', bytes = 'x'}}
end
