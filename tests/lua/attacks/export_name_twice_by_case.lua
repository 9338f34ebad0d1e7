-- export: error "two files named"
function attack(fiche)
  return {{name = 'a.txt', bytes = '1'}, {name = 'A.TXT', bytes = '2'}}
end
