-- conversion: error "has no attribute"
function attack(fiche)
  fiche.root:set('onload', 'x')
end
