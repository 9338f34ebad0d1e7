-- check, conversion, export: error "__tostring must give a string"
function attack(fiche)
  return tostring(setmetatable({}, {__tostring = function() return {} end}))
end
