-- check, conversion, export: error "grows too long"
function attack(fiche)
  local s = ('x'):rep(1000000) return (('%s'):rep(50)):format(s, s, s, s, s, s, s, s, s, s, s, s, s, s, s, s, s, s, s, s, s, s, s, s, s, s, s, s, s, s)
end
