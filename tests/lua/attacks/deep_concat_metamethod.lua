-- check, conversion, export: error "C stack overflow"
function attack(fiche)
  local m = {}
  m.__concat = function(a, b) return a .. b end
  return setmetatable({}, m) .. 'x'
end
