-- check, conversion, export: error "more than two digits"
function attack(fiche)
  return ('%.99999f'):format(1)
end
