-- What a label must say besides ingredients, allergens and nutrition, each with the law that asks for it. What is there goes
-- to facts.says, what is missing to facts.gaps. Article and Annex are of Regulation (EU) 1169/2011.

-- Allergens as the list of ingredients sets them apart, each once: "wheat, milk, almonds" (Annex II names the cereal and
-- the nut).
local function marked_once(facts)
  local list, seen = {}, {}
  for _, run in ipairs(facts.ingredients) do
    local word = tamis.lower(run.text)
    if run.marked and not seen[word] then
      seen[word] = true
      list[#list + 1] = word
    end
  end
  if not list[1] then
    for _, row in ipairs(facts.allergens) do
      if row.level == "contains" or row.level == "assumed" then list[#list + 1] = row.name end
    end
  end
  for _, name in ipairs(facts.options) do list[#list + 1] = say("optional", { what = name }) end
  return list
end

-- Sold loose: name and allergens. EU: Article 44(1)(a) with 9(1)(c); what else is to be stated, and how, is national
-- (Article 44(1)(b) and (2)). US: 21 U.S.C. 343(w) is of packaged food; the Food Code 2022, 3-602.12(C), asks for a written
-- notice of major allergens (from memory), as far as a state has taken it up.
local function loose_particulars(facts)
  local list = facts.law == "us" and facts.contains or marked_once(facts)
  facts.says[1] = { "contains_allergens", list[1] and table.concat(list, ", ") or say("none_of_them") }
  if facts.may[1] then facts.says[2] = { "may_contain", table.concat(facts.may, ", ") } end
end

-- More than 1.2 % of alcohol by volume is stated of a drink: Article 9(1)(k) and 28, Annex XII: one decimal at most, "% vol"
-- behind it, "alc" before it. US: 27 CFR parts 4, 5 and 7, of another authority: nothing is printed.
local function alcohol_of(fiche, facts, add, missing)
  local told = tamis.settings.alcohol
  if told then
    local number = tonumber((told:gsub(",", ".")))
    if not number or number < 0 or number > 100 then return missing("alcohol_unread", { what = told }) end
    if number > 1.2 then add("alcohol", tamis.number(math.floor(number * 10 + 0.5) / 10, label_language()) .. "\u{a0}% vol") end
  elseif tamis.settings.drink then
    -- 1.2 % by volume weighs 0.95 % (ethanol 0.789 g/ml at 20 °C): what may have that much has to be measured.
    local components = fiche:components()
    local last = components[#components]
    local _, most = last and last:share_of("alcohol")
    if (most or 1) > 0.0095 then missing("alcohol_unknown", nil, last) end
  end
end

function particulars(fiche, facts)
  facts.says = {}
  local set, law, eu = tamis.settings, facts.law, facts.law == "eu"
  local function add(key, words) if words and words ~= "" then facts.says[#facts.says + 1] = { key, words } end end
  local function missing(key, values, element)
    facts.gaps[#facts.gaps + 1] = { key = key, values = values or {}, element = element }
  end
  local function lacks(gap) if gap then missing(gap.key, gap.values, gap.element) end end
  -- Name of the food: Article 9(1)(a) and 17; 21 CFR 101.3. Never a fancy name alone (17(4)).
  if tamis.trim(facts.title) == "" then missing("no_name") end
  if facts.loose then return loose_particulars(facts) end
  local keep = keep_of(fiche)

  -- Net quantity: Article 9(1)(e), 23 and Annex IX; 21 CFR 101.7. In the same field of vision as the name: Article 13(5).
  local gap
  facts.quantity, gap = quantity_of(fiche, law)
  lacks(gap)
  -- Date: Article 9(1)(f), 24 and Annex X. Use by what soon becomes dangerous: 24(1). No federal law asks for one in the US,
  -- except of infant formula (21 CFR 107.20): printed when told.
  local wants_date = eu or set.date or set.made
  if wants_date then
    local day
    day, gap = date_of(keep)
    lacks(gap)
    if not set.mark then
      missing("no_mark", nil, keep)
    elseif day then
      -- "Best if used by": the words the agencies of the US ask makers to use (common practice).
      add(set.mark == "use-by" and "use_by" or eu and "best_before" or "best_before_us", day_written(day, law))
      facts.dated = true
    end
  end
  -- Storage conditions: Article 9(1)(g) and 25; always with a use-by date, Annex X 2(b). US: of food that must be kept cold,
  -- by the agency's guidance of 1997 (62 FR 8248, from memory).
  local storage = storage_of(keep)
  if not storage then missing("no_storage", nil, keep) end
  add("storage", storage)
  -- Conditions, or time, once open: Article 25(2).
  add("opened", opened_of(keep))
  -- Instructions for use, where it would be difficult without them: Article 9(1)(j) and 27.
  add("use", use_of(keep))
  alcohol_of(fiche, facts, add, missing)
  -- Origin where leaving it out would mislead, and of meat: Article 9(1)(i) and 26, Regulations (EU) 1337/2013 and 2018/775;
  -- US: 19 CFR 134 of imports, 7 CFR 65 of meat in shops. Who answers for the label knows whether it is asked for.
  add("origin", set.origin)
  -- Warnings: Article 10 and Annex III; 21 CFR 101.17. Word for word.
  for _, words in ipairs(set.warnings) do add("warning", words) end
  -- Lot, not when a date names the day: Directive 2011/91/EU, Articles 2 and 5 (a); an L before it, Article 3. In the US of
  -- few foods alone: printed when told.
  if set.lot then
    add("lot", set.lot:match("^L") and set.lot or "L" .. set.lot)
  elseif eu and not facts.dated then
    missing("no_lot")
  end
  -- Name and address of the business: Article 9(1)(h) and 8(1); 21 CFR 101.5: street, city, state, ZIP code.
  if tamis.kitchen.name == "" then missing("no_business") end
  if not set.address then missing("no_address") end
  add("business", tamis.kitchen.name ~= "" and set.address and tamis.kitchen.name .. ", " .. set.address or nil)
end
