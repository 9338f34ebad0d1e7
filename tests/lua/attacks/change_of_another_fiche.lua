-- check, conversion, export: error "only a conversion may change"
function attack(fiche)
  local other = assert(fiche:open('other.fiche.xml')) other.root:set('id', 'x')
end
