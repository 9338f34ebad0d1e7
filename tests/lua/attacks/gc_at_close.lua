-- check, conversion, export: error "__gc is not there"
function attack(fiche)
  setmetatable({}, {__gc = function() while true do end end})
end
