-- check, conversion, export: instructions
function attack(fiche)
  repeat local x = nil until x
end
