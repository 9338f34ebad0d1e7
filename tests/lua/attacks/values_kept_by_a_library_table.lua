-- check, conversion, export: error "locked"
function attack(fiche)
  table.insert(math, fiche)
end
