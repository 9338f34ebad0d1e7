-- export: error "is no plain file name"
function attack(fiche)
  return {{name = '/tmp/x.txt', bytes = 'x'}}
end
