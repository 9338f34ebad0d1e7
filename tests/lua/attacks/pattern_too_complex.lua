-- check, conversion, export: error "pattern too complex"
function attack(fiche)
  return (('a'):rep(1000)):find(('a-'):rep(300) .. 'b') or ('x'):rep(500):find(('(x'):rep(250))
end
