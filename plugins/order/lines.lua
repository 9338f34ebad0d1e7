-- Gathers what all dishes take, one row a food.

local rows, by_key

-- The row of a food, or of a name where the food is not known.
function row_of(food, name)
  local key = food and food.id or "name " .. tamis.lower(name)
  local row = rawget(by_key, key)
  if not row then
    row = { food = food, names = {}, name = food and food:name(order_language()) or name, supplier = food and food.supplier or "", listed = food and food.own or false,
      grams = 0, bought = 0, weighed = false, others = {}, traces = {}, dishes = {}, parts = {}, in_parts = 0 }
    by_key[key] = row
    rows[#rows + 1] = row
  end
  return row
end

local function add_dish(row, title, grams)
  for _, dish in ipairs(row.dishes) do
    if dish.title == title then
      dish.grams = dish.grams + grams
      return
    end
  end
  row.dishes[#row.dishes + 1] = { title = title, grams = grams }
end

local function add_once(list, words)
  for _, one in ipairs(list) do
    if one == words then return end
  end
  list[#list + 1] = words
end

-- "2 bunches (Roast lamb)": what nobody can weigh goes by the author's own words.
local function in_its_own_units(line, batches, title)
  local element = rawget(line, "element")
  local amount = element and element.kind == "ingredient" and element.amount
  if not amount then return say("amount_unknown", { dish = title }) end
  local times = batches * line.share
  if amount.low and math.abs(times - 1) > 1e-9 then amount = amount * (math.floor(times * 1000 + 0.5) / 1000) end
  return amount:written(order_language()) .. " (" .. title .. ")"
end

local function add_line(line, one)
  local title, batches = one.fiche.title, one.batches
  local food = rawget(line, "food")
  local row = row_of(food, line.name)
  add_once(row.names, tamis.lower(line.name))
  local grams = rawget(line, "grams")
  if not grams then
    if line.trace then add_once(row.traces, title) else row.others[#row.others + 1] = in_its_own_units(line, batches, title) end
    add_dish(row, title, 0)
    return
  end
  if grams * batches <= 0 then return end
  row.weighed = true
  add_dish(row, title, grams * batches)
  if #line.parts > 0 and food and food:splits()[1] then
    row.in_parts = row.in_parts + grams * batches
    for _, part in ipairs(line.parts) do take_part(row, part.food, (rawget(part, "grams") or 0) * batches) end
    return
  end
  row.grams = row.grams + grams * batches
  row.bought = row.bought + line.bought * batches
end

-- What the house does not list is called as the dishes call it: "ox cheeks", not the table's "stewing beef".
local function name_row(row)
  if row.listed or not row.food or not row.names[1] then return end
  if not row.names[2] then
    row.name = row.names[1]
    return
  end
  local others = {}
  for _, name in ipairs(row.names) do
    if name ~= tamis.lower(row.name) then others[#others + 1] = name end
  end
  row.name = row.name .. " (" .. table.concat(others, ", ") .. ")"
end

local function is_tap_water(line)
  local food = rawget(line, "food")
  return food and food.id == "water" and not food:pack(tamis.settings.day)
end

local function add_bases(bases, one)
  for _, base in ipairs(one.bases) do
    local key = base.fiche.path .. "#" .. base.title
    local found
    for _, known in ipairs(bases) do
      if known.key == key then found = known end
    end
    if not found then
      found = { key = key, title = base.title, id = base.fiche.id, grams = 0, batches = 0, dishes = {}, unit = "g", per_unit = 1 }
      bases[#bases + 1] = found
    end
    found.grams = found.grams + base.grams * one.batches
    found.batches = found.batches + base.batches * one.batches
    add_dish(found, one.fiche.title, base.grams * one.batches)
  end
end

-- Rows of foods, rows of what is made in the house, grams of tap water.
function gathered(made)
  rows, by_key = {}, {}
  local bases, water = {}, 0
  for _, one in ipairs(made) do
    if not one.left_out and one.batches > 0 then
      for _, line in ipairs(one.lines) do
        if is_tap_water(line) then water = water + (rawget(line, "grams") or 0) * one.batches else add_line(line, one) end
      end
      add_bases(bases, one)
    end
  end
  for _, base in ipairs(bases) do
    if base.grams >= 1000 then base.unit, base.per_unit = "kg", 1000 end
  end
  local kept = {}
  for _, row in ipairs(from_wholes(rows)) do
    if row.weighed or row.others[1] or row.traces[1] then
      name_row(row)
      kept[#kept + 1] = row
    end
  end
  return kept, bases, water
end
