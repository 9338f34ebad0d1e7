-- check, conversion, export: error "index out of range"
function attack(fiche)
  return select(-5, 1, 2)
end
