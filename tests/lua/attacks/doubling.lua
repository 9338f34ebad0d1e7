-- check, conversion, export: memory
function attack(fiche)
  local s = 'x' while true do s = s .. s end
end
