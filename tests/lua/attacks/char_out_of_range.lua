-- check, conversion, export: error "value out of range"
function attack(fiche)
  return string.char(256)
end
