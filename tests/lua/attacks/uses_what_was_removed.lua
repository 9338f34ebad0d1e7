-- conversion: harmless
function attack(fiche)
  local step = fiche:steps()[2]
  local words, taking = step.first_text, step:takes()[1]
  step:remove()
  pcall(function() return taking.thing.label end)
  for _, name in ipairs({'kind', 'name', 'id', 'text', 'own_text', 'prose', 'parent', 'component', 'fiche', 'place', 'mark', 'label',
    'number', 'mass_in', 'mass_out', 'temperature', 'heated_to', 'first_text'}) do pcall(function() return tostring(step[name]) end) end
  for _, name in ipairs({'attributes', 'children', 'all', 'texts', 'runs', 'sentence', 'blocks', 'actions', 'makes', 'takes', 'gives', 'waits_for', 'losses', 'allergens'}) do
    pcall(function() return step[name](step) end)
  end
  words:replace(1, 1, 'x')
  step:set('do', 'whip')
  step:set_text('gone')
  step:add('note'):set_text('gone too')
  pcall(words.replace, words, 1, 100, 'y')
  fiche.root:child('component'):add('step', nil)
  fiche.root:all('step')[2]:remove()
end
