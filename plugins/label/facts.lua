-- What the label says, worked out once for both forms: plain text throughout.

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

local function allergen_facts(fiche, law, out)
  local found, unknown, statement = fiche:allergens()
  local rows, may, not_stated, not_found = {}, {}, {}, {}
  for _, allergen in ipairs(found) do
    if allergen[law] then
      local name = tamis.allergen(allergen.id, label_language())
      local sources = {}
      for _, source in ipairs(allergen.sources) do
        local how = {}
        if source.level ~= "contains" then how[1] = say("level_" .. source.level) end
        if source.cross_contact then
          how = { say("contact") }
        else
          how[#how + 1] = source.specified and say("specified", { date = source.specified }) or say("no_specification")
        end
        sources[#sources + 1] = source.food .. " (" .. table.concat(how, ", ") .. ")"
      end
      rows[#rows + 1] = { name = name, sources = sources, stated = say("stated_" .. allergen.stated), level = allergen.level }
      if allergen.level == "may" or (allergen.level == "none" and allergen.stated == "may") then may[#may + 1] = name end
      local firm = allergen.level == "contains" or allergen.level == "assumed" or allergen.level == "option"
      if firm and allergen.stated == "no" then not_stated[#not_stated + 1] = name end
      if allergen.level == "none" and allergen.stated == "contains" then not_found[#not_found + 1] = name end
    end
  end
  out.allergens, out.may = rows, may
  local gaps = out.gaps
  if not statement then
    gaps[#gaps + 1] = say("no_statement")
  elseif not_stated[1] then
    gaps[#gaps + 1] = say("not_stated", { what = list_of(not_stated) })
  end
  if not_found[1] then gaps[#gaps + 1] = say("not_found", { what = list_of(not_found) }) end
  if unknown[1] then gaps[#gaps + 1] = say("unknown_foods", { what = list_of(unknown) }) end
end

local function figure(row, column)
  local words = row[column .. "_text"]
  if not words then return nil end
  return (row.lacking > 0 and "≥ " or "") .. words .. "\u{a0}" .. row.unit
end

local function nutrition_facts(fiche, law, out)
  local nutrition = fiche:nutrition(law, label_language())
  out.nutrition = nutrition
  out.rows = {}
  for _, row in ipairs(nutrition.rows) do
    out.rows[#out.rows + 1] = { name = say(row.name), key = row.name, hundred = figure(row, "per_100_g"), portion = figure(row, "per_portion") }
  end
  local gaps = out.gaps
  if not nutrition.mass then gaps[#gaps + 1] = say("no_mass_known") end
  local names, grams = {}, 0
  for _, lacking in ipairs(nutrition.lacking) do
    names[#names + 1] = lacking.food
    grams = grams + lacking.grams
  end
  if names[1] then
    local share = nutrition.served > 0 and 100 * grams / nutrition.served or 0
    local said = share < 1 and "< 1" or whole(share)
    gaps[#gaps + 1] = say("lacking", { grams = whole(grams), share = said, what = list_of(names) })
  end
  if nutrition.not_weighed[1] then gaps[#gaps + 1] = say("not_weighed", { what = list_of(nutrition.not_weighed) }) end
end

-- Small print that keeps nothing from being printed.
local quiet = { left_behind = true }

function facts_of(fiche)
  local law = tamis.settings.law
  local out = { title = fiche.title, law = law, gaps = {}, notes = {} }
  local items, left_out, contains = fiche:ingredient_list(law, tamis.settings.list, label_language())
  out.ingredients, out.contains = ingredient_runs(items, law), contains
  allergen_facts(fiche, law, out)
  nutrition_facts(fiche, law, out)
  for _, doubt in ipairs(fiche:doubts()) do
    if not quiet[doubt.kind] then
      out.gaps[#out.gaps + 1] = say(doubt.kind, { what = doubt.what, grams = whole(doubt.grams) })
    end
  end
  local assumed = fiche:assumed()
  if assumed[1] then out.gaps[#out.gaps + 1] = say("assumed", { what = list_of(assumed) }) end
  if left_out then out.notes[1] = say("water_left_out") end
  if law == "us" then out.notes[#out.notes + 1] = say("us_panel") end
  out.notes[#out.notes + 1] = say("basis_" .. law)
  local one = law == "us" and "per_serving" or out.nutrition.pieces and "per_piece" or "per_portion"
  out.portion_head = say(one)
  if out.nutrition.portion_mass then
    out.portion_head = out.portion_head .. " (" .. say("of", { mass = whole(out.nutrition.portion_mass) }) .. ")"
  end
  return out
end

-- What the components bring to the whole: rows of {title, grams, kJ, fat, sugars, salt} as text.
function component_rows(facts)
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
