-- conversion: error "grows too large"
function attack(fiche)
  while true do fiche.root:child('title'):add_text(('x'):rep(1000)) end
end
