-- export: error "is no plain file name"
function attack(fiche)
  return {{name = 'a\xc2\x9b.txt', bytes = 'x'}}
end
