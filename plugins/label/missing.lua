-- What is said of each thing that is missing (in words.lua), and what to do about it.

local advice = {
  no_statement = "write <allergens contains=\"...\"> into the fiche, as the cook knows it: the two must agree",
  not_stated = "add it to <allergens contains=\"...\">, or take the food out",
  not_found = "name the food that brings it, or take it out of <allergens>",
  unknown_foods = "give the food in kitchen.xml with contains, may-contain and specified, from the supplier's specification",
  assumed = "give the food in kitchen.xml with contains, may-contain and specified=\"DATE\", from the supplier's specification",
  lacking = "write <declared fat=\"...\" .../> into the food in kitchen.xml, from the supplier's specification; or nutrition=exempt where the law lets you",
  not_weighed = "weigh it, and write the grams",
  no_mass_known = "state what the yield weighs: <yield mass=\"...\">",
  no_mass = "weigh it, and write the grams",
  divided = "say how much goes where: take=\"...\" on its use",
  loss_unknown = "weigh the loss, and write the grams",
  taken_out = "weigh it before and after, and write the loss in the step",
  cooked_down = "write the loss: <loss what=\"cooking\" amount=\"...\"/>, and straining or trim by themselves",
  yield_over = "weigh what is made, and put the yield or the amounts right",
  yield_for_mass = "state the amounts and losses of every step",
  file_missing = "put the file where the fiche says it is",
  us_panel = "have the panel made and print with nutrition=elsewhere, or nutrition=exempt where 21 CFR 101.9(j) lets you",
  no_name = "give the name of the food: --set name=...",
  no_quantity = "say what is in a pack: --set \"quantity=390 g\", or each=\"...\" of the yield",
  quantity_unread = "write a mass or a volume: --set \"quantity=390 g\"",
  quantity_kind = "write one mass or one volume: --set \"quantity=390 g\"",
  no_date = "say when it was made, --set made=2026-11-27, and how long it keeps, <keep for=\"...\">; or the date, --set date=2026-11-30",
  date_unread = "write year, month and day: 2026-11-27",
  no_keep = "write <keep where=\"fridge\" at=\"...\" for=\"3 days\"> into the last component; or --set date=...",
  no_mark = "--set mark=use-by for food that soon becomes dangerous, else mark=best-before; who answers for it decides",
  no_storage = "write <keep where=\"fridge\" at=\"at most 4 °C\">, or --set storage=...",
  no_lot = "--set lot=..., or a date that names the day",
  no_business = "give the kitchen file a name",
  no_address = "write it once, in kitchen.xml: <plugin id=\"label\"><setting name=\"address\">...</setting></plugin>",
  alcohol_unread = "write the figure alone: --set alcohol=12.5",
  alcohol_unknown = "have it measured: --set alcohol=12.5",
}

local together = { assumed = true, unknown_foods = true, not_weighed = true, not_stated = true, not_found = true, no_mass = true }

function advice_on(gap) return advice[gap.key] end

-- As a finding says it: small letter, no full stop.
function gap_words(gap, language) return say_in(language, gap.key, gap.values) end

-- As sentences, in the language of the label; foods of which the same is said in one.
function gap_sentences(facts)
  local said, order = {}, {}
  for _, gap in ipairs(facts.gaps) do
    local one = rawget(together, gap.key) and rawget(said, gap.key)
    if one then
      one.values.what = one.values.what .. ", " .. gap.values.what
    else
      one = { key = gap.key, values = {} }
      for name, value in pairs(gap.values) do one.values[name] = value end
      said[gap.key] = one
      order[#order + 1] = one
    end
  end
  for i, gap in ipairs(order) do
    local words = gap_words(gap, label_language())
    local first = words:match("^" .. utf8.charpattern) or ""
    order[i] = tamis.upper(first) .. words:sub(#first + 1) .. "."
  end
  return order
end
