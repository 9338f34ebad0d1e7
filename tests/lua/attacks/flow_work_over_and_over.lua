-- check, conversion, export: instructions
function attack(fiche)
  while true do fiche:nutrition() fiche:cost() fiche:allergens() fiche:ingredient_list() end
end
