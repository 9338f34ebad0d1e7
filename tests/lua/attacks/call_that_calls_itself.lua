-- check, conversion, export: memory
function attack(fiche)
  local t = setmetatable({}, {})
  local m = {}
  m.__call = function(self) return 1 + self() end
  setmetatable(t, m)
  t()
end
