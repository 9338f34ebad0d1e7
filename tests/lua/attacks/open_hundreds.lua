-- check, conversion, export: instructions
function attack(fiche)
  for i = 1, 100000 do fiche:open('f' .. i .. '.fiche.xml') end
end
