-- check, conversion, export: instructions
function attack(fiche)
  local s = ('x'):rep(2000000) while true do s = s:upper():lower():reverse() end
end
