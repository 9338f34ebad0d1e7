-- check, conversion, export: error "there is no name in string "dump""
function attack(fiche)
  return string.dump(function() end)
end
