-- check, conversion, export: error "there is no global "io""
function attack(fiche)
  io.open('/etc/hostname')
end
