-- check, conversion, export: error "there is no global "collectgarbage""
function attack(fiche)
  collectgarbage('stop')
end
