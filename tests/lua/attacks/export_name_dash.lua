-- export: error "is no plain file name"
function attack(fiche)
  return {{name = '-rf', bytes = 'x'}}
end
