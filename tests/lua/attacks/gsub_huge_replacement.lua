-- check, conversion, export: error "grows too long"
function attack(fiche)
  return ((('x'):rep(10000)):gsub('x', ('y'):rep(10000)))
end
