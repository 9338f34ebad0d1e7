-- export: error "is no plain file name"
function attack(fiche)
  return {{name = '.profile', bytes = 'x'}}
end
