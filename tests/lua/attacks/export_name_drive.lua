-- export: error "is no plain file name"
function attack(fiche)
  return {{name = 'C:x.txt', bytes = 'x'}}
end
