-- check, conversion, export: instructions
function attack(fiche)
  local a = ('x'):rep(1500000) .. 'a'
  local b = ('x'):rep(1500000) .. 'a'
  local n = 0
  while n < 400 do n = n + 1 if a ~= b then return end end
  while true do end
end
