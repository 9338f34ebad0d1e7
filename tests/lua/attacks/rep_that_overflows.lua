-- check, conversion, export: error "grows too long"
function attack(fiche)
  return (('x'):rep(3)):rep(math.maxinteger // 2, 'yy')
end
