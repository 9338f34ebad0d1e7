-- check, conversion, export: instructions
function attack(fiche)
  pcall(function() while true do end end)
  fiche:say(nil, "still here")
end
