-- check, conversion, export: instructions
function attack(fiche)
  while true do fiche:select('//*[contains(., "x")]') end
end
