-- check, conversion, export: instructions
function attack(fiche)
  xpcall(error, function() while true do end end)
end
