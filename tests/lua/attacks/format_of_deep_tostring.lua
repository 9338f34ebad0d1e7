-- check, conversion, export: error "C stack overflow"
function attack(fiche)
  local m = {}
  m.__tostring = function(self) return ('%s'):format(self) end
  return ('%s'):format(setmetatable({}, m))
end
