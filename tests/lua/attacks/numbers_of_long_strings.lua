-- check, conversion, export: instructions
function attack(fiche)
  local s = '0x' .. ('f'):rep(1000000)
  for i = 1, 50 do local x = s + 0 end
  while true do end
end
