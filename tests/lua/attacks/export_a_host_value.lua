-- export: error "the export gave a userdata"
function attack(fiche)
  return fiche
end
