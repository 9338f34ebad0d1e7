-- check, conversion, export: error "more than 1000 findings"
function attack(fiche)
  for i = 1, 1000000 do fiche:say(nil, 'x' .. i) end
end
