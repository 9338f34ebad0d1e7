-- export: error "is no plain file name"
function attack(fiche)
  return {{name = ('x'):rep(200), bytes = 'x'}}
end
