-- check, conversion, export: error "takes no setting"
function attack(fiche)
  return tamis.settings['../../x\0y']
end
