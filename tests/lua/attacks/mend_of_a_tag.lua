-- check, conversion, export: error "mend takes the place of a text"
function attack(fiche)
  fiche:say(nil, 'x'):mend(fiche.root, '</fiche>')
end
