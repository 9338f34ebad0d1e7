-- check, conversion, export: error "grows too long"
function attack(fiche)
  return (''):rep(1 << 62, 'x')
end
