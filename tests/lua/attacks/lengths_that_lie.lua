-- check, conversion, export: harmless
function attack(fiche)
  local lying = setmetatable({1, 2}, {__len = function() return 1 << 62 end, __index = function() return 'x' end})
  table.insert(lying, 3)
  assert(table.remove(lying) == 3)
  assert(table.concat(lying) == '12')
  table.sort(lying)
  assert(select('#', table.unpack(lying)) == 2)
end
