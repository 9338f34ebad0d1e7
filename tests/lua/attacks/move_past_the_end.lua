-- check, conversion, export: error "past the end"
function attack(fiche)
  table.move({1, 2, 3}, 1, 3, math.maxinteger - 1)
end
