-- check, conversion, export: error "cannot be written to"
function attack(fiche)
  string.format = function() return 'mine' end
end
