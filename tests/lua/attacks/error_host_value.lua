-- check, conversion, export: error "an error that is a userdata"
function attack(fiche)
  error(fiche)
end
