-- check, conversion, export: error "there is no global "coroutine""
function attack(fiche)
  coroutine.wrap(function() while true do end end)()
end
