-- check, conversion, export: error "mends this place already"
function attack(fiche)
  local text = fiche.root:child('title').first_text
  fiche:say(text, 'x'):mend(text:place_of(1, 5), 'a'):mend(text:place_of(3, 7), 'b')
end
