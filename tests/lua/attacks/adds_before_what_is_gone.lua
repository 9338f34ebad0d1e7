-- conversion: error "is not in this element"
function attack(fiche)
  local component = fiche.root:child('component')
  local step = component:child('step')
  step:remove()
  component:add('step', step)
end
