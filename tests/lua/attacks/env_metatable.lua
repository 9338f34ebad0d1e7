-- check, conversion, export: error "locked"
function attack(fiche)
  setmetatable(_ENV, {__index = function() return print end})
end
