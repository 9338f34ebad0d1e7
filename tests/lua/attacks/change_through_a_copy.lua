-- check, conversion, export: error "only a conversion may change"
function attack(fiche)
  local copy = fiche:converted('us') or fiche:open('other.fiche.xml') copy.root:child('title'):set_text('x')
end
