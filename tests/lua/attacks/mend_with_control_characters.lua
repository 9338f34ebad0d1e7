-- check, conversion, export: error "control character"
function attack(fiche)
  local text = fiche.root:child('title').first_text fiche:say(text, 'x'):mend(text, 'a\0b\1')
end
