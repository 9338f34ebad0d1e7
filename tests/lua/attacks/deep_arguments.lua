-- check, conversion, export: harmless
function attack(fiche)
  for _, wild in ipairs({math.mininteger, math.maxinteger, 0/0, 1/0, '', '\0', ('x'):rep(500)}) do
    pcall(fiche.find, fiche, wild)
    pcall(fiche.all, fiche, wild)
    pcall(fiche.ingredient_list, fiche, wild, wild, wild)
    pcall(fiche.nutrition, fiche, wild, 'en')
    pcall(fiche.cost, fiche, wild)
    pcall(tamis.amount, wild, wild, wild)
    pcall(tamis.amount, wild)
    pcall(tamis.number, wild, wild)
    pcall(tamis.number, wild)
    pcall(tamis.allergen, wild, wild)
    pcall(tamis.food, wild)
    pcall(tamis.nearest, wild, {wild, wild})
    local text = fiche.root:child('title').first_text
    pcall(text.place_of, text, wild, wild)
    pcall(text.place_of, text, 1, wild)
  end
end
