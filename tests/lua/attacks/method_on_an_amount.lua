-- check, conversion, export: error "wanted element, got amount"
function attack(fiche)
  return fiche.root.set(tamis.amount('1 kg'), 'id', 'x')
end
