-- Ingredients, allergens and nutrition of the label, worked out once for both forms: plain text throughout.

local function list_of(names) return table.concat(names, ", ") end

local function whole(number) return tamis.number(math.floor(number + 0.5), label_language()) end

-- "12", "4.5" for shares of a name's own food: whole numbers, halves below 5 (common practice).
local function percent_text(percent)
  if percent < 5 then return tamis.number(math.floor(percent * 2 + 0.5) / 2, label_language()) end
  return whole(percent)
end

-- An item as runs of {text, marked}: "damsons 27 %".
local function item_runs(item)
  local runs = {}
  for i, run in ipairs(item.runs) do runs[i] = run end
  if item.percent and item.percent <= 100 then runs[#runs + 1] = { text = " " .. percent_text(item.percent) .. "\u{a0}%" } end
  if item.percent and item.percent > 100 then runs[#runs + 1] = { text = " (" .. whole(item.percent) .. "\u{a0}g / 100\u{a0}g)" } end
  if item.parts[1] then
    runs[#runs + 1] = { text = " (" }
    for i, part in ipairs(item.parts) do
      if i > 1 then runs[#runs + 1] = { text = ", " } end
      for _, run in ipairs(item_runs(part)) do runs[#runs + 1] = run end
    end
    runs[#runs + 1] = { text = ")" }
  end
  return runs
end

local function ingredient_runs(items, law)
  local runs, small = {}, false
  for i, item in ipairs(items) do
    local between = i > 1 and ", " or ""
    if law == "us" and item.small and not small and #items > 1 then
      small = true
      between = (i > 1 and ", " or "") .. say("small") .. " "
    end
    if between ~= "" then runs[#runs + 1] = { text = between } end
    for _, run in ipairs(item_runs(item)) do runs[#runs + 1] = run end
  end
  return runs
end

-- Foods by what they are called here, each {element, also}: the line of the fiche, or the component that a line of another
-- file comes with, and that line.
local function gather_places(fiche, places, component)
  for _, ingredient in ipairs(fiche:ingredients()) do
    local food = ingredient.food
    for _, name in ipairs({ ingredient.label, food and food:name("en") or "", food and food:name(label_language()) or "" }) do
      places[name] = rawget(places, name) or (component and { component, ingredient } or { ingredient })
    end
  end
  for _, one in ipairs(fiche:all("component", "ingredient")) do
    local linked = one:get("from") and one:linked()
    if linked and linked.fiche then gather_places(linked.fiche, places, component or one) end
  end
end

-- What keeps the label from being printed: {key, values, element, also}. The words are gap_words' and advice's.
local function add_gap(out, key, values, element, also)
  out.gaps[#out.gaps + 1] = { key = key, values = values or {}, element = element, also = also }
end

local function add_gaps_of_foods(out, key, names, values)
  for _, name in ipairs(names) do
    local place = rawget(out.places, (name:gsub(" in .*$", ""))) or rawget(out.places, name) or {}
    local own = { what = name }
    for k, v in pairs(values and values[name] or {}) do own[k] = v end
    add_gap(out, key, own, place[1], place[2])
  end
end

local function sources_of(allergen)
  local sources = {}
  for i, source in ipairs(allergen.sources) do
    local how = {}
    if source.level ~= "contains" then how[1] = say("level_" .. source.level) end
    if source.cross_contact then
      how = { say("contact") }
    else
      how[#how + 1] = source.specified and say("specified", { date = source.specified }) or say("no_specification")
    end
    sources[i] = source.food .. " (" .. table.concat(how, ", ") .. ")"
  end
  return sources
end

-- Regulation (EU) 1169/2011, Article 9(1)(c), 21 and Annex II; US: 21 U.S.C. 343(w), sesame since 2023 (21 U.S.C. 321(qq)).
local function allergen_facts(fiche, law, out)
  local found, unknown, statement = fiche:allergens()
  local statements = fiche.root:child("allergens")
  out.allergens, out.may, out.options = {}, {}, {}
  for _, allergen in ipairs(found) do
    if allergen[law] then
      local name = tamis.allergen(allergen.id, label_language())
      out.allergens[#out.allergens + 1] = { name = name, sources = sources_of(allergen), stated = say("stated_" .. allergen.stated),
        level = allergen.level }
      if allergen.level == "may" or (allergen.level == "none" and allergen.stated == "may") then out.may[#out.may + 1] = name end
      if allergen.level == "option" then out.options[#out.options + 1] = name end
      local firm = allergen.level == "contains" or allergen.level == "assumed" or allergen.level == "option"
      local first = allergen.sources[1]
      if firm and allergen.stated == "no" and statement then
        add_gap(out, "not_stated", { what = name }, statements, first and first.element)
      end
      if allergen.level == "none" and allergen.stated == "contains" then add_gap(out, "not_found", { what = name }, statements) end
    end
  end
  if not statement then add_gap(out, "no_statement") end
  add_gaps_of_foods(out, "unknown_foods", unknown)
end

local function figure(row, column)
  local words = row[column .. "_text"]
  if not words then return nil end
  return (row.lacking > 0 and "≥ " or "") .. words .. "\u{a0}" .. row.unit
end

-- Regulation (EU) 1169/2011, Article 9(1)(l) and 30 to 35, Annex XV; by calculation, Article 31(4)(b) and (c).
local function nutrition_facts(fiche, law, out)
  local nutrition = fiche:nutrition(law, label_language())
  out.nutrition = nutrition
  out.rows = {}
  for _, row in ipairs(nutrition.rows) do
    out.rows[#out.rows + 1] = { name = say(row.name), key = row.name, hundred = figure(row, "per_100_g"), portion = figure(row, "per_portion") }
  end
  if tamis.settings.nutrition ~= "printed" then return end
  if not nutrition.mass then add_gap(out, "no_mass_known", nil, fiche:yields()[1]) end
  local names, values = {}, {}
  for _, lacking in ipairs(nutrition.lacking) do
    local share = nutrition.served > 0 and 100 * lacking.grams / nutrition.served or 0
    names[#names + 1] = lacking.food
    values[lacking.food] = { grams = whole(lacking.grams), share = share < 1 and "< 1" or whole(share) }
  end
  add_gaps_of_foods(out, "lacking", names, values)
  add_gaps_of_foods(out, "not_weighed", nutrition.not_weighed)
  -- 21 CFR 101.9(c) asks for more than a table of foods knows.
  if law == "us" then add_gap(out, "us_panel") end
end

-- Small print that keeps nothing from being printed.
local quiet = { left_behind = true }
-- Of masses alone: who names allergens only does not wait for them.
local for_allergens = { file_missing = true }

function facts_of(fiche)
  local law, loose = tamis.settings.law, tamis.settings.kind == "loose"
  local out = { title = tamis.settings.name or fiche.title, law = law, loose = loose, trial = tamis.settings.trial, gaps = {},
    notes = {}, places = {} }
  gather_places(fiche, out.places)
  local items, left_out, contains = fiche:ingredient_list(law, tamis.settings.list, label_language())
  out.ingredients, out.contains = ingredient_runs(items, law), contains
  allergen_facts(fiche, law, out)
  add_gaps_of_foods(out, "assumed", (fiche:assumed()))
  for _, doubt in ipairs(fiche:doubts()) do
    if not rawget(quiet, doubt.kind) and (not loose or rawget(for_allergens, doubt.kind)) then
      add_gap(out, doubt.kind, { what = doubt.what, grams = whole(doubt.grams) }, doubt.element)
    end
  end
  if loose then
    out.rows = {}
  else
    nutrition_facts(fiche, law, out)
    local one = law == "us" and "per_serving" or out.nutrition.pieces and "per_piece" or "per_portion"
    out.portion_head = say(one)
    if out.nutrition.portion_mass then
      out.portion_head = out.portion_head .. " (" .. say("of", { mass = whole(out.nutrition.portion_mass) }) .. ")"
    end
    if left_out then out.notes[1] = say("water_left_out") end
  end
  particulars(fiche, out)
  if law == "us" and not loose and tamis.settings.nutrition ~= "printed" then out.notes[#out.notes + 1] = say("us_not_printed") end
  out.notes[#out.notes + 1] = say((loose and "loose_" or "basis_") .. law)
  return out
end

-- What the components bring to the whole: rows of {title, grams, kJ, fat, sugars, salt} as text.
function component_rows(facts)
  if facts.loose then return {}, {} end
  local rows = {}
  local keys = facts.law == "us" and { "calories", "fat", "sugars", "sodium_mg" } or { "energy_kj", "fat", "sugars", "salt" }
  for _, of in ipairs(facts.nutrition.components) do
    local row = { of.component and of.component.title or "", whole(of.grams) }
    for _, key in ipairs(keys) do
      local digits = key == "salt" and 10 or 1
      row[#row + 1] = tamis.number(math.floor(of[key] * digits + 0.5) / digits, label_language())
    end
    rows[#rows + 1] = row
  end
  local head = { say("component"), say("mass") }
  local units = { calories = "kcal", sodium_mg = "mg" }
  for _, key in ipairs(keys) do
    local name = key == "sugars" and say("sugars_alone") or say(key)
    head[#head + 1] = key == "energy_kj" and "kJ" or name .. ", " .. (rawget(units, key) or "g")
  end
  return head, rows
end
