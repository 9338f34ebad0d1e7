-- export: harmless
function attack(fiche)
  return '\0\27[2J\xff\xfe'
end
