-- check, conversion, export: error "__close is not there"
function attack(fiche)
  local x <close> = setmetatable({}, {__close = function() while true do end end})
end
