-- check, conversion, export: error "another file"
function attack(fiche)
  local other = assert(fiche:open('other.fiche.xml'))
  fiche:say(nil, 'x'):mend(other.root:child('title').first_text, 'y')
end
