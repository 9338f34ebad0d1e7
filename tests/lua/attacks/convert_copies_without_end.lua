-- check, conversion, export: error "more than 16 conversions"
function attack(fiche)
  for i = 1, 100 do fiche:converted('us') end
end
