-- check, conversion, export: instructions
function attack(fiche)
  for i = 1, 100 do fiche:converted('us') end
end
