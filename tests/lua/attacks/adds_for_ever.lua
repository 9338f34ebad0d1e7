-- conversion: error "grows too large"
function attack(fiche)
  while true do fiche.root:child('component'):add('note') end
end
