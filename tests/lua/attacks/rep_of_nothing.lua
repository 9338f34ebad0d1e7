-- check, conversion, export: instructions
function attack(fiche)
  while true do local s = string.rep('', 1 << 62, '') end
end
