-- check, conversion, export: instructions
function attack(fiche)
  local s = ('a'):rep(20000) return s:find('(.*)%1%1b')
end
