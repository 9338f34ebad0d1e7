-- check, conversion, export: error "number expected"
function attack(fiche)
  local t = setmetatable({}, {__name = ('n'):rep(100000)})
  return math.floor(t)
end
