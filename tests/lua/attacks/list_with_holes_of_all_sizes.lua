-- check, conversion, export: error "this list is too long"
function attack(fiche)
  local t, i = {}, 1
  while i > 0 do t[i] = 'x' t[i + 1] = 'x' i = i * 2 end
  t[3] = 'x'
  t[math.maxinteger] = 'x'
  assert(#t > 1 << 40, 'it is short')
  table.insert(t, 'y')
end
