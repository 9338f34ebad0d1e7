-- check, conversion, export: error "not valid UTF-8"
function attack(fiche)
  local text = fiche.root:child('title').first_text fiche:say(text, 'x'):mend(text, '\xc3')
end
