-- export: error "an empty list"
function attack(fiche)
  return setmetatable({}, {__len = function() return 5 end, __index = function() return {name = 'a', bytes = 'b'} end})
end
