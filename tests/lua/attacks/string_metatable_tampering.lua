-- check, conversion, export: error "attempt to index a nil value"
function attack(fiche)
  getmetatable('').__index.rep = nil
end
