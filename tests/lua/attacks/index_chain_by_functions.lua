-- check, conversion, export: instructions
function attack(fiche)
  local t = setmetatable({}, {__index = function(self, k) return k end})
  while t.x do end
end
