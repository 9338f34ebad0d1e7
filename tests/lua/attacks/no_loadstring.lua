-- check, conversion, export: error "there is no global "loadstring""
function attack(fiche)
  loadstring('x')
end
