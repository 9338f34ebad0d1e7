-- check, conversion, export: error "does not know %p"
function attack(fiche)
  return ('%p'):format({})
end
