-- check, conversion, export: error "wanted element, got food"
function attack(fiche)
  return fiche.root.children(tamis.food('milk-whole'))
end
