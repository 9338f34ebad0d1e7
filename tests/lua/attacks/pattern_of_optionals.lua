-- check, conversion, export: instructions
function attack(fiche)
  return (('a'):rep(300)):find(('a?'):rep(100) .. ('a'):rep(100) .. 'b') or (('a'):rep(5000)):match('.-.-.-.-.-b')
end
