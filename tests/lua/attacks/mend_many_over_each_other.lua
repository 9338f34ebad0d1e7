-- check, conversion, export: harmless
function attack(fiche)
  local text = fiche.root:child('title').first_text
  for i = 1, 5 do for j = i, 6 do fiche:say(text, 'x'):mend(text:place_of(i, j), '<&>"' .. i) end end
end
