-- check, conversion, export: error "wanted string, got table"
function attack(fiche)
  return tamis.settings[{}]
end
