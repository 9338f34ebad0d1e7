-- check, conversion, export: error "findings are about the fiche at hand"
function attack(fiche)
  local other = assert(fiche:open('other.fiche.xml')) other:say(nil, 'x')
end
