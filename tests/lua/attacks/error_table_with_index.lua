-- check, conversion, export: error "an error that is a table"
function attack(fiche)
  error(setmetatable({}, {__index = function() while true do end end, __name = 'x'}))
end
