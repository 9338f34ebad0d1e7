-- check, conversion, export: error "next gives the first pair"
function attack(fiche)
  return next({1, 2}, 'nothing')
end
