-- check, conversion, export: error "too many results"
function attack(fiche)
  return table.unpack({}, 1, 500000)
end
