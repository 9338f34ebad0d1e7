-- check, conversion, export: error "wanted element, got nothing"
function attack(fiche)
  return fiche.root.children()
end
