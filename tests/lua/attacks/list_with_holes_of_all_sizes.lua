-- check, conversion, export: error "this list is too long"
function attack(fiche)
  local t, i = {}, 1
  while i > 0 do t[i] = 'x' i = i * 2 end
  t[math.maxinteger] = 'x'
  assert(#t > 1 << 40, 'too long')
  table.insert(t, 'y')
end
