-- check, conversion, export: error "there is no global "load""
function attack(fiche)
  load('return 1')
end
