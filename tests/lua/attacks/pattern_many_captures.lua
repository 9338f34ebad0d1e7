-- check, conversion, export: error "too many captures"
function attack(fiche)
  return ('x'):rep(100):find(('(x)'):rep(40))
end
