-- export: error "is no plain file name"
function attack(fiche)
  return {{name = 'a\n.txt', bytes = 'x'}}
end
