-- export: error "is no plain file name"
function attack(fiche)
  return {{name = 'a/../../x.txt', bytes = 'x'}}
end
