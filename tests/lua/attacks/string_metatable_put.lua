-- check, conversion, export: error "table expected, got string"
function attack(fiche)
  setmetatable('', {})
end
