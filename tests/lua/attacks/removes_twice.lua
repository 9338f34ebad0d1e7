-- conversion: error "it was removed before"
function attack(fiche)
  local title = fiche.root:child('title') title:remove() title:remove()
end
