-- export: error "is no plain file name"
function attack(fiche)
  return {{name = 'x ', bytes = 'x'}}
end
