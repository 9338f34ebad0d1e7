-- check, conversion, export: error "an error that is a table"
function attack(fiche)
  error(setmetatable({}, {__tostring = function() while true do end end}))
end
