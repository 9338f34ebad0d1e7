-- export: error "is no plain file name"
function attack(fiche)
  return {{name = 'com1', bytes = 'x'}}
end
