-- export: error "has no name"
function attack(fiche)
  return {setmetatable({}, {__index = function() while true do end end})}
end
