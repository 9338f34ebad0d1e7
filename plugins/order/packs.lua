-- What is needed as packs of the supplier's, the stock taken off.

local tiny = 1e-6

-- Grams of an amount of a food; nil where nobody knows what a litre or a piece of it weighs.
local function grams_of(amount, food)
  if not amount or not amount.middle then return nil end
  if amount.kind == "mass" then return amount.middle end
  if amount.kind == "volume" then
    local density = food:density()
    return density and amount.middle * density
  end
  local piece = food:piece()
  return amount.kind == "count" and piece and amount.middle * piece or nil
end

-- What the settings say is in the store, else the kitchen file.
local function stock_of(food)
  for _, word in ipairs(tamis.settings.stock) do
    local id, what = word:match("^([^=]+)=(.+)$")
    if id == food.id then return tamis.amount(what) end
  end
  return food.stock
end

-- The unit of a row: that of the pack, else pieces where it is counted, else grams or kilograms.
local function set_unit(row, pack, counted)
  local pack_grams = pack and grams_of(pack, row.food)
  if pack_grams and pack.kind ~= "count" then
    row.unit, row.per_unit = pack.unit, pack_grams / pack:number(pack.unit)
    row.pack_units = pack:number(pack.unit)
  elseif pack_grams or counted then
    row.unit, row.per_unit = "pc", row.food:piece() or counted
    row.pack_units = pack_grams and pack.middle
  else
    local large = row.bought >= 1000
    row.unit, row.per_unit = large and "kg" or "g", large and 1000 or 1
  end
end

local function set_needs(row, taken)
  row.needed = row.grams / row.per_unit
  row.as_bought = row.bought / row.per_unit
  if taken then
    row.needed = taken.counted and row.unit == "pc" and taken.exact or taken.exact * taken.piece / row.per_unit
    row.as_bought = row.unit == "pc" and taken.count or taken.count * taken.piece / row.per_unit
    row.left_parts = taken.left
    for _, dish in ipairs(row.dishes) do dish.of_part = rawget(dish, "part") end
  end
  if row.unit == "pc" then row.as_bought = math.ceil(row.as_bought - tiny) end
end

local function set_stock(row)
  local stock = stock_of(row.food)
  if not stock then return end
  local grams = grams_of(stock, row.food)
  if row.unit == "pc" and stock.kind == "count" then row.stock = stock.middle
  elseif grams then row.stock = grams / row.per_unit
  else row.notes[#row.notes + 1] = say("stock_not_read", { what = stock:written(order_language()) }) end
end

local function set_packs(row, pack, price, currency)
  row.short = math.max(0, row.as_bought - (row.stock or 0))
  if row.short < tiny then row.short = 0 end
  if not row.pack_units then return end
  row.pack = pack:written(order_language())
  row.packs = math.ceil(row.short / row.pack_units - tiny)
  row.left = (row.stock or 0) + row.packs * row.pack_units - row.as_bought
  row.price, row.currency, row.sum = price, currency, row.packs * price
end

-- Fills in unit, needed, as_bought, stock, short, pack, packs, left, price, sum and the notes.
function to_packs(row)
  row.notes = {}
  for _, key in ipairs({ "unit", "per_unit", "pack_units", "needed", "as_bought", "stock", "short", "pack", "packs", "left",
    "price", "sum", "left_parts" }) do row[key] = false end
  row.currency = ""
  if row.others[1] then row.notes[1] = say("in_own_units", { what = table.concat(row.others, "; ") }) end
  if row.traces[1] then row.notes[#row.notes + 1] = say("to_taste", { dishes = table.concat(row.traces, "; ") }) end
  if not row.weighed then return end
  if not row.food then
    set_unit(row, nil, nil)
    set_needs(row, nil)
    row.short = row.as_bought
    row.notes[#row.notes + 1] = say("food_unknown")
    return
  end
  local taken = (#row.parts > 0 or row.in_parts > 0) and pieces_of(row) or nil
  if taken then row.bought = taken.count * taken.piece end
  local pack, price, currency = row.food:pack(tamis.settings.day)
  set_unit(row, pack, taken and taken.counted and taken.piece)
  set_needs(row, taken)
  set_stock(row)
  set_packs(row, pack, price, currency)
  if pack and not row.pack_units then
    row.notes[#row.notes + 1] = say("pack_not_weighed", { pack = pack:written(order_language()) })
  elseif not pack then
    row.notes[#row.notes + 1] = say(row.food.own and "no_pack" or "not_in_kitchen")
  end
end
