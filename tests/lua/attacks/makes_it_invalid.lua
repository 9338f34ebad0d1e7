-- conversion: error "what it made cannot be used"
function attack(fiche)
  fiche.root:all('food-temp')[1]:set_text('as hot as the sun')
end
