-- check, conversion, export: error "more than two digits"
function attack(fiche)
  return ('%99999d'):format(1)
end
