-- check, conversion, export: error "error-in-disguise"
function attack(fiche)
  error('plugin.lua:999: error-in-disguise', 0)
end
