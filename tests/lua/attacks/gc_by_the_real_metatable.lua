-- check, conversion, export: harmless
function attack(fiche)
  local t = setmetatable({}, {__index = {}})
  local m = getmetatable(t)
  m.__gc = function() while true do end end
  m.__close = m.__gc
  m.__mode = "kv"
  t = nil
end
