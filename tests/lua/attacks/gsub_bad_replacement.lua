-- check, conversion, export: error "invalid use of '%'"
function attack(fiche)
  return (('x'):gsub('x', '%'))
end
