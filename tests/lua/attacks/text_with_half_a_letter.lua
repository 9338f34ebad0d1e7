-- conversion: error "not valid UTF-8"
function attack(fiche)
  fiche.root:child('title'):set_text('caf\xc3')
end
