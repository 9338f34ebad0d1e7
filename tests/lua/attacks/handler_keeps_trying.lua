-- check, conversion, export: instructions
function attack(fiche)
  local function again() while true do end end
  while true do pcall(xpcall, again, again) end
end
