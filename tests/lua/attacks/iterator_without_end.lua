-- check, conversion, export: instructions
function attack(fiche)
  for x in function() return true end do end
end
