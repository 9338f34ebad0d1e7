-- check, conversion, export: instructions
function attack(fiche)
  local one = fiche
  while true do one = assert(one:open('self.fiche.xml')) end
end
