-- check, conversion, export: error "there is no global "dofile""
function attack(fiche)
  dofile('/etc/hostname')
end
