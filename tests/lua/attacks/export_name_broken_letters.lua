-- export: error "is no plain file name"
function attack(fiche)
  return {{name = 'caf\xc3.txt', bytes = 'x'}}
end
