-- check, conversion, export: error "item 1 is a table"
function attack(fiche)
  return table.concat({{}})
end
