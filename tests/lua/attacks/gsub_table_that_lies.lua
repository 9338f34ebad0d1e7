-- check, conversion, export: instructions
function attack(fiche)
  local t = setmetatable({}, {__index = function(self, k) while true do end end})
  return (('x'):gsub('x', t))
end
