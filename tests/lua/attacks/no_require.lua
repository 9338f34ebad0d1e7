-- check, conversion, export: error "there is no global "require""
function attack(fiche)
  require('os')
end
