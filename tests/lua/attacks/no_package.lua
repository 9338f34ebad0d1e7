-- check, conversion, export: error "there is no global "package""
function attack(fiche)
  package.loadlib('x', 'y')
end
