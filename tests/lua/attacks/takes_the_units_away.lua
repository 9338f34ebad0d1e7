-- conversion: error "what it made cannot be used"
function attack(fiche)
  for _, one in ipairs(fiche:ingredients()) do one:set_text('some') one:set('food', 'no-such-food') one:set('id', 'same') end
end
