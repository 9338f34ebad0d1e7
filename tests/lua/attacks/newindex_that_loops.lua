-- check, conversion, export: error "C stack overflow"
function attack(fiche)
  local t
  t = setmetatable({}, {__newindex = function(self, k, v) self[k] = v end})
  t.x = 1
end
