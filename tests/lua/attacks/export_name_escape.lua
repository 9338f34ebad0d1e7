-- export: error "is no plain file name"
function attack(fiche)
  return {{name = 'a\27[31m.txt', bytes = 'x'}}
end
