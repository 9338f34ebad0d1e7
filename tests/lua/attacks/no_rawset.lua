-- check, conversion, export: error "there is no global "rawset""
function attack(fiche)
  rawset(string, 'rep', nil)
end
