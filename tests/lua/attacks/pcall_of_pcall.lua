-- check, conversion, export: instructions
function attack(fiche)
  while true do pcall(pcall, pcall, error) end
end
