-- check, conversion, export: error "a path from the root in a predicate"
function attack(fiche)
  return fiche:select('//*[//*]')
end
