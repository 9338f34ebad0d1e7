-- check, conversion, export: error "C stack overflow"
function attack(fiche)
  local m = {}
  m.__tostring = function(self) return tostring(self) end
  return tostring(setmetatable({}, m))
end
