-- check, conversion, export: error "too many flags"
function attack(fiche)
  return ('%------d'):format(1)
end
