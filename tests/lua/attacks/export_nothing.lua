-- export: error "the export gave a nil"
function attack(fiche)
  return nil
end
