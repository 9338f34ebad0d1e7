-- check, conversion, export: error "there is no global "os""
function attack(fiche)
  os.exit(0)
end
