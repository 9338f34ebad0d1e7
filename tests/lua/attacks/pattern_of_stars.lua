-- check, conversion, export: instructions
function attack(fiche)
  return (('a'):rep(5000)):find('.*.*.*.*.*x')
end
