-- check, conversion, export: error "xxxxxxxx"
function attack(fiche)
  error(('x'):rep(1000000))
end
