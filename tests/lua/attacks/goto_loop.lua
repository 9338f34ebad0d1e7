-- check, conversion, export: instructions
function attack(fiche)
  local n = 0
  ::top::
  n = n + 1
  if n then goto top end
end
