-- check, export: error "only a conversion may change"
function attack(fiche)
  fiche.root:set('id', 'x')
end
