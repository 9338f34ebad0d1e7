-- conversion: error "cannot be removed"
function attack(fiche)
  fiche.root:remove()
end
