-- check, conversion, export: error "an error that is a nil"
function attack(fiche)
  error()
end
