-- check, conversion, export: instructions
function attack(fiche)
  while true do for _, step in ipairs(fiche:steps()) do step:share_of('water') local x = step.temperature end end
end
