-- conversion: instructions
function attack(fiche)
  local component = fiche.root:child('component')
  while true do component:add('ingredient') end
end
