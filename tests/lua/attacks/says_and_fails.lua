-- conversion: error "on purpose"
function attack(fiche)
  fiche.root:child('title'):set_text('changed')
  fiche:say(nil, 'half done')
  error('on purpose')
end
