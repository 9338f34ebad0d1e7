-- conversion: instructions
function attack(fiche)
  while true do fiche.root:set('id', 'x') local m = fiche.mass fiche:steps()[1]:share_of('water') end
end
