-- export: error "is no plain file name"
function attack(fiche)
  return {{name = '..\\x.txt', bytes = 'x'}}
end
