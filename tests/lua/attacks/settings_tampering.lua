-- check, conversion, export: error "cannot be written to"
function attack(fiche)
  tamis.settings.word = 'mine'
end
