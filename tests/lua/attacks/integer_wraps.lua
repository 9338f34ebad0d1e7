-- check, conversion, export: instructions
function attack(fiche)
  local i = math.maxinteger while i ~= 0.5 do i = i + 1 end
end
