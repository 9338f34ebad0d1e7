-- check, conversion, export: error "without a message"
function attack(fiche)
  fiche:say(nil, ' \n\t ')
end
