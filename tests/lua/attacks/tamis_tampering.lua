-- check, conversion, export: error "cannot be written to"
function attack(fiche)
  tamis.amount = function() return nil end
end
