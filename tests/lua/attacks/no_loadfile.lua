-- check, conversion, export: error "there is no global "loadfile""
function attack(fiche)
  loadfile('/etc/hostname')
end
