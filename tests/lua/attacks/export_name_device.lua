-- export: error "is no plain file name"
function attack(fiche)
  return {{name = 'NUL.txt', bytes = 'x'}}
end
