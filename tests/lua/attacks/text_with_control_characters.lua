-- conversion: error "control character"
function attack(fiche)
  fiche.root:child('title'):set_text('a\0b')
end
