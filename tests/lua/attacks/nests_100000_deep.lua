-- conversion: error "too deep"
function attack(fiche)
  local inner = fiche.root:child('component'):add('note')
  for i = 1, 100000 do inner = inner:add('em') end
end
