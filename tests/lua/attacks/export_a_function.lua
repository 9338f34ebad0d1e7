-- export: error "the export gave a function"
function attack(fiche)
  return function() while true do end end
end
