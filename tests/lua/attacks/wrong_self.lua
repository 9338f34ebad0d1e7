-- check, conversion, export: error "wanted fiche, got number"
function attack(fiche)
  return fiche.say(5)
end
