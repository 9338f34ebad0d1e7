-- check, conversion, export: error "C stack overflow"
function attack(fiche)
  local m = {}
  m.__eq = function(a, b) return a == b end
  local a, b = setmetatable({}, m), setmetatable({}, m)
  return a == b
end
