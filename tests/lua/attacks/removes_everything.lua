-- conversion: error "what it made cannot be used"
function attack(fiche)
  for _, child in ipairs(fiche.root:children()) do child:remove() end
end
