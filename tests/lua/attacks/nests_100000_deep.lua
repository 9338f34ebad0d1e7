-- conversion: error "too deep"
function attack(fiche)
  local inner = fiche:steps()[1]:add('until')
  for i = 1, 100000 do inner = inner:add('until') end
end
