-- export: error "two files named"
function attack(fiche)
  return {{name = 'a.txt', bytes = '1'}, {name = 'a.txt', bytes = '2'}}
end
