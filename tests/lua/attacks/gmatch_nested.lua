-- check, conversion, export: instructions
function attack(fiche)
  local s = ('ab '):rep(2000)
  for a in s:gmatch('%a') do for b in s:gmatch('%a') do for c in s:gmatch('%a') do end end end
end
