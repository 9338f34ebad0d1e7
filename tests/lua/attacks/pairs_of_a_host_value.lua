-- check, conversion, export: error "pairs walks tables"
function attack(fiche)
  for k in pairs(fiche) do end
end
