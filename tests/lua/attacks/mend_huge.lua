-- check, conversion, export: error "more than 4 MB"
function attack(fiche)
  local words = ('x'):rep(500000)
  local text = fiche.root:child('title').first_text
  for i = 1, 100 do fiche:say(text, 'x'):mend(text, words) end
end
