-- check, conversion, export: error "too many results"
function attack(fiche)
  local s = ('x'):rep(1000000) return s:byte(1, -1)
end
