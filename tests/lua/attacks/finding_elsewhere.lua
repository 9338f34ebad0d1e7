-- check, conversion, export: error "the place is in another file"
function attack(fiche)
  local other = assert(fiche:open('other.fiche.xml')) fiche:say(other.root, 'x')
end
