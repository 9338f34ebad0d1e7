-- check, conversion, export: error "there is no name in math "random""
function attack(fiche)
  return math.random()
end
