-- check, conversion, export: harmless
function attack(fiche)
  local values = {fiche, fiche.root, fiche.root:child('title').first_text, fiche.root.place, tamis, tamis.settings, tamis.kitchen,
    tamis.amount('1 kg'), tamis.food('milk-whole'), fiche:things()[1], fiche:steps()[1], fiche:steps()[1]:takes()[1], {}, 'x', 5, true}
  local names = {'say', 'children', 'child', 'all', 'get', 'value', 'place_of', 'linked', 'takes', 'gives', 'set', 'set_text', 'add_text',
    'remove', 'replace', 'written', 'to', 'allergens', 'per_100_g', 'piece', 'density', 'open', 'find', 'converted', 'nutrition', 'cost',
    'ingredient_list', 'meaning', 'share_of', 'why_open', 'also', 'mend', 'amount', 'food', 'nearest', 'words', 'number'}
  local calls = {}
  for _, value in ipairs(values) do
    for _, name in ipairs(names) do
      local good, call = pcall(function() return value[name] end)
      if good and type(call) == 'function' then calls[#calls + 1] = call end
    end
  end
  for _, call in ipairs(calls) do
    for _, value in ipairs(values) do
      if tamis.type(value) ~= 'element' and tamis.type(value) ~= 'text' then
        pcall(call, value)
        pcall(call, value, value, value)
        pcall(call, value, -1, 1 << 62, 'x')
      end
    end
  end
end
