-- check, conversion, export: error "there is no global "debug""
function attack(fiche)
  debug.sethook()
end
