-- What the cost sheet says of its own. {x} is filled in.
words = {
  en = {
    cost = "Cost", on_day = "prices of {day}", latest = "latest prices", batch = "Batch", portion = "One portion", piece = "One piece",
    portions = "{n} portions", pieces = "{n} pieces",
    food = "Food", hands = "Hands", packed = "Packaging", all = "All", left_over = "of food: bought and in no portion",
    price = "Sold for", net = "without tax", food_share = "Food, of the price without tax", share = "All, of the price without tax",
    aim = "the house wants at most {share} %", over_aim = "over what the house wants ({share} %)",
    foods = "Foods", name = "", goes_in = "goes in", bought = "bought", money = "cost", of_all = "of food", since = "price since",
    components = "Components", component = "", both = "both",
    dominates = "What dominates", first = "{names}: {share} % of the food",
    hands_time = "{minutes} min hands-on at the house's hourly cost", open = "What is not in it", complete = "Every price is known.",
    no_price = "no price", no_pack = "price without a pack that can be weighed", no_mass = "mass not known", trace = "too little to cost",
    water = "tap water", other_currency = "price in another currency",
    unpriced = "{what}: no price; {grams} g of {all} g bought ({share} %). The totals are without them.",
    unpriced_packaging = "Packaging without a price: {what}.",
    no_hour = "{minutes} min of hands-on work: the kitchen file does not say what an hour costs (<labour hour=\"…\"/>).",
    one_unstated = "One step does not say how long it takes a person.",
    unstated = "{n} steps do not say how long they take a person.",
    not_costed = "Not costed: {what}.", no_portions = "The yield states neither portions nor pieces: no cost of one.",
    rest = "Exact sums; each line rounded once, to a millionth, and shown to the cent. Of what comes from another file, the share that is taken of its batch, its hands too.",
    g = "g", kg = "kg",
  },
  fr = {
    cost = "Coût", on_day = "prix du {day}", latest = "derniers prix", batch = "La fournée", portion = "Une portion", piece = "Une pièce",
    portions = "{n} portions", pieces = "{n} pièces",
    food = "Denrées", hands = "Main-d'œuvre", packed = "Emballage", all = "Tout", left_over = "denrées achetées et dans aucune portion",
    price = "Vendu", net = "hors taxe", food_share = "Denrées, du prix hors taxe", share = "Tout, du prix hors taxe",
    aim = "la maison veut au plus {share} %", over_aim = "au-dessus de ce que veut la maison ({share} %)",
    foods = "Denrées", name = "", goes_in = "entre", bought = "acheté", money = "coût", of_all = "des denrées", since = "prix depuis",
    components = "Composants", component = "", both = "les deux",
    dominates = "Ce qui domine", first = "{names}\u{a0}: {share} % des denrées",
    hands_time = "{minutes} min de travail au coût horaire de la maison", open = "Ce qui n'y est pas", complete = "Tous les prix sont connus.",
    no_price = "sans prix", no_pack = "prix sans conditionnement pesable", no_mass = "masse inconnue", trace = "trop peu pour compter",
    water = "eau du robinet", other_currency = "prix dans une autre monnaie",
    unpriced = "{what}\u{a0}: sans prix\u{a0}; {grams} g sur {all} g achetés ({share} %). Les totaux sont sans eux.",
    unpriced_packaging = "Emballage sans prix\u{a0}: {what}.",
    no_hour = "{minutes} min de travail\u{a0}: le fichier de la cuisine ne dit pas ce que coûte une heure (<labour hour=\"…\"/>).",
    one_unstated = "Une étape ne dit pas combien de temps elle occupe une personne.",
    unstated = "{n} étapes ne disent pas combien de temps elles occupent une personne.",
    not_costed = "Non compté\u{a0}: {what}.", no_portions = "Le rendement n'indique ni portions ni pièces\u{a0}: pas de coût à l'unité.",
    rest = "Sommes exactes\u{a0}; chaque ligne arrondie une fois, au millionième, et montrée au centime. De ce qui vient d'un autre fichier, la part prise de sa fournée, travail compris.",
    g = "g", kg = "kg",
  },
}

local chosen = words.en
local language = "en"

function speak(fiche)
  language = fiche.language:match("^%a+") or "en"
  if not rawget(words, language) then language = "en" end
  chosen = words[language]
end

function label_language() return language end

function say(key, values)
  return (chosen[key]:gsub("{(%w+)}", values or {}))
end
