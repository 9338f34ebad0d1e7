-- check, conversion, export: error "attempt to index a nil value"
function attack(fiche)
  local _ENV = nil return x
end
