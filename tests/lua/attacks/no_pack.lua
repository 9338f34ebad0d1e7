-- check, conversion, export: error "there is no name in string "pack""
function attack(fiche)
  return string.pack('!16', 1)
end
