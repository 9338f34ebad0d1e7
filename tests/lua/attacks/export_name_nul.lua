-- export: error "is no plain file name"
function attack(fiche)
  return {{name = 'a\0.txt', bytes = 'x'}}
end
