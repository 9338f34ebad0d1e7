-- check, conversion, export: error "does not know"
function attack(fiche)
  return ('%'):format(1)
end
