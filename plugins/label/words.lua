-- What the label says of its own. {x} is filled in.
words = {
  en = {
    colon = ":", ingredients = "Ingredients", contains = "Contains", may_contain = "May contain", none = "None found.",
    nutrition = "Nutrition", per_100_g = "per 100 g", per_portion = "per portion", per_piece = "per piece", per_serving = "per serving",
    of = "{mass} g",
    energy_kj = "Energy", energy_kcal = "", calories = "Calories", fat = "Fat", saturates = "of which saturates",
    carbohydrate = "Carbohydrate", total_carbohydrate = "Total carbohydrate", sugars = "of which sugars", sugars_alone = "Sugars", fibre = "Fibre",
    protein = "Protein", salt = "Salt", sodium_mg = "Sodium",
    not_ready = "Not ready to print", ready = "Nothing is assumed",
    ready_says = "Every food has a supplier's dated specification and every figure is known. Local law and whoever answers for the label decide.",
    where_from = "Allergens: where each comes from", allergen = "Allergen", source = "Comes with", stated = "Stated",
    by_component = "By component", component = "Component", mass = "g", batch = "All",
    level_contains = "", level_assumed = "usual in it, assumed", level_option = "when it is taken", level_may = "may contain",
    specified = "specification {date}", no_specification = "no specification",
    stated_contains = "contains", stated_may = "may contain", stated_no = "not stated",
    contact = "in the kitchen",
    no_statement = "The fiche states no allergens.",
    not_stated = "Not in the author's statement: {what}.", not_found = "Stated, and no ingredient brings it: {what}.",
    unknown_foods = "Nothing is known of: {what}. Their allergens are not in this table.",
    assumed = "No dated specification from the supplier: {what}.",
    lacking = "Some or all nutrition figures are lacking for {grams} g ({share} %) of it: {what}. Figures marked ≥ are without them.",
    not_weighed = "Not weighed, so not counted: {what}.",
    no_mass_known = "What it all comes to is not known: no figures per 100 g or portion.",
    no_mass = "No mass for {what}.",
    divided = "How much of {what} goes where it is divided is not said: taken as equal parts.",
    loss_unknown = "A loss has no figure ({what}).",
    taken_out = "{what}: cooked in it and taken out; {grams} g of them are taken to have stayed.",
    cooked_down = "The yield states {grams} g less than goes in: taken as water that cooked off.",
    yield_over = "The yield states {grams} g more than goes in.",
    yield_for_mass = "The masses through the steps are not known: the yield's {grams} g are taken.",
    file_missing = "The file of {what} cannot be read.",
    water_left_out = "Water is at most 5 % of the finished food and is left out (Annex VII A 1).",
    us_panel = "No Nutrition Facts panel: trans fat, cholesterol, added sugars, vitamins and minerals are not known here.",
    basis_eu = "Regulation (EU) 1169/2011, Articles 18 to 22 and 30 to 35, Annexes II, VII, VIII, XIV; rounding as in the Commission's guidance of December 2012. Added up from the foods as they go in; alcohol as if none boils off.",
    basis_us = "21 CFR 101.4 and 101.9(c); 21 U.S.C. 343(w). Added up from the foods as they go in.",
    small = "contains 2 % or less of", or_list = ", ", rests = "What this rests on",
  },
  fr = {
    colon = "\u{a0}:", ingredients = "Ingrédients", contains = "Contient", may_contain = "Peut contenir", none = "Aucun trouvé.",
    nutrition = "Valeurs nutritionnelles", per_100_g = "pour 100 g", per_portion = "par portion", per_piece = "par pièce",
    per_serving = "par portion", of = "{mass} g",
    energy_kj = "Énergie", energy_kcal = "", calories = "Calories", fat = "Matières grasses", saturates = "dont acides gras saturés",
    carbohydrate = "Glucides", total_carbohydrate = "Glucides totaux", sugars = "dont sucres", sugars_alone = "Sucres", fibre = "Fibres alimentaires",
    protein = "Protéines", salt = "Sel", sodium_mg = "Sodium",
    not_ready = "Pas prête à imprimer", ready = "Rien n'est supposé",
    ready_says = "Chaque denrée a une spécification datée du fournisseur et chaque valeur est connue. Le droit local et la personne responsable de l'étiquette décident.",
    where_from = "Allergènes\u{a0}: d'où vient chacun", allergen = "Allergène", source = "Vient avec", stated = "Déclaré",
    by_component = "Par composant", component = "Composant", mass = "g", batch = "Tout",
    level_contains = "", level_assumed = "habituel, supposé", level_option = "si on le prend", level_may = "peut contenir",
    specified = "spécification du {date}", no_specification = "sans spécification",
    stated_contains = "contient", stated_may = "peut contenir", stated_no = "non déclaré",
    contact = "dans la cuisine",
    no_statement = "La fiche ne déclare pas d'allergènes.",
    not_stated = "Absent de la déclaration de l'auteur\u{a0}: {what}.", not_found = "Déclaré, et aucun ingrédient ne l'apporte\u{a0}: {what}.",
    unknown_foods = "On ne sait rien de\u{a0}: {what}. Leurs allergènes ne sont pas dans ce tableau.",
    assumed = "Sans spécification datée du fournisseur\u{a0}: {what}.",
    lacking = "Des valeurs nutritionnelles manquent pour {grams} g ({share} %)\u{a0}: {what}. Les valeurs marquées ≥ sont sans elles.",
    not_weighed = "Non pesé, donc non compté\u{a0}: {what}.",
    no_mass_known = "La masse totale n'est pas connue\u{a0}: pas de valeurs pour 100 g ni par portion.",
    no_mass = "Pas de masse pour {what}.",
    divided = "On ne dit pas comment {what} se partage\u{a0}: pris en parts égales.",
    loss_unknown = "Une perte sans chiffre ({what}).",
    taken_out = "{what}\u{a0}: cuits dedans et retirés\u{a0}; {grams} g sont supposés restés.",
    cooked_down = "Le rendement indique {grams} g de moins que ce qui entre\u{a0}: pris comme eau évaporée.",
    yield_over = "Le rendement indique {grams} g de plus que ce qui entre.",
    yield_for_mass = "Les masses à travers les étapes ne sont pas connues\u{a0}: les {grams} g du rendement sont pris.",
    file_missing = "Le fichier de {what} ne peut pas être lu.",
    water_left_out = "L'eau fait au plus 5 % du produit fini et n'est pas citée (annexe VII A 1).",
    us_panel = "Pas de tableau « Nutrition Facts »\u{a0}: graisses trans, cholestérol, sucres ajoutés, vitamines et minéraux ne sont pas connus ici.",
    basis_eu = "Règlement (UE) 1169/2011, articles 18 à 22 et 30 à 35, annexes II, VII, VIII, XIV\u{a0}; arrondis selon les lignes directrices de la Commission de décembre 2012. Somme des denrées mises en œuvre\u{a0}; l'alcool est compté en entier.",
    basis_us = "21 CFR 101.4 et 101.9(c)\u{a0}; 21 U.S.C. 343(w). Somme des denrées mises en œuvre.",
    small = "contient 2 % ou moins de", or_list = ", ", rests = "Sur quoi cela repose",
  },
}

local chosen = words.en
local language = "en"

-- The language of the fiche where there are words in it, else English.
function speak(fiche)
  language = fiche.language:match("^%a+") or "en"
  if not rawget(words, language) then language = "en" end
  chosen = words[language]
end

function label_language() return language end

function say(key, values)
  return (chosen[key]:gsub("{(%w+)}", values or {}))
end
