-- check, conversion, export: error "wanted element, text or place, got number"
function attack(fiche)
  fiche:say(1, 'x')
end
