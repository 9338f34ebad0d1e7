-- check, conversion, export: instructions
function attack(fiche)
  while true do fiche:select('//*[* = *][* = *][* = *]//*') end
end
