-- What the cost sheet says, worked out once for both forms: plain text throughout.

function whole(number) return tamis.number(math.floor(number + 0.5), label_language()) end

local function tenth(number) return tamis.number(math.floor(number * 10 + 0.5) / 10, label_language()) end

local function percent(share) return tenth(100 * share) end

-- "1.25 kg", "7.5 g"
function grams_text(grams)
  if not grams then return "" end
  if grams >= 1000 then return tamis.number(math.floor(grams / 10 + 0.5) / 100, label_language()) .. "\u{a0}" .. say("kg") end
  return tenth(grams) .. "\u{a0}" .. say("g")
end

-- One line a food: the same of several components together.
local function gather(cost)
  local rows, at = {}, {}
  for _, line in ipairs(cost.foods) do
    local key = line.name .. "|" .. (rawget(line, "open") or "") .. "|" .. (rawget(line, "since") or "")
    local row = rawget(at, key)
    if not row then
      row = { name = line.name, cost = 0, grams = 0, bought = 0, open = rawget(line, "open"), since = rawget(line, "since") }
      at[key] = row
      rows[#rows + 1] = row
    end
    row.cost = row.cost + (rawget(line, "cost") or 0)
    row.grams = row.grams + (rawget(line, "grams") or 0)
    row.bought = row.bought + (rawget(line, "bought") or 0)
  end
  table.sort(rows, function(a, b)
    if a.cost ~= b.cost then return a.cost > b.cost end
    return a.bought > b.bought
  end)
  return rows
end

local function money(number, currency)
  local text = string.format("%.2f", number)
  if label_language() ~= "en" then text = text:gsub("%.", ",") end
  return text .. "\u{a0}" .. currency
end

-- The foods that make up most of it, at most three: as many as it takes for half.
local function dominant(rows, food)
  local names, sum = {}, 0
  for i, row in ipairs(rows) do
    if i > 3 or sum >= food / 2 or row.cost <= 0 then break end
    names[#names + 1] = row.name
    sum = sum + row.cost
  end
  return names, food > 0 and sum / food or 0
end

local function gaps_of(cost, rows, minutes)
  local gaps, names, small, boxes = {}, {}, {}, {}
  for _, row in ipairs(rows) do
    if row.open == "trace" or row.open == "water" then
      small[#small + 1] = row.name .. " (" .. say(row.open) .. ")"
    elseif row.open then
      names[#names + 1] = row.name .. (row.open == "no_price" and "" or " (" .. say(row.open) .. ")")
    end
  end
  for _, line in ipairs(cost.packaging) do
    if rawget(line, "open") then boxes[#boxes + 1] = line.name end
  end
  if names[1] then
    local share = cost.all > 0 and cost.unpriced / cost.all or 0
    gaps[1] = say("unpriced", { what = table.concat(names, ", "), grams = cost.unpriced < 1 and "< 1" or whole(cost.unpriced), all = whole(cost.all),
      share = share < 0.001 and "< 0.1" or percent(share) })
  end
  if boxes[1] then gaps[#gaps + 1] = say("unpriced_packaging", { what = table.concat(boxes, ", ") }) end
  if not cost.hour_known and cost.seconds > 0 then gaps[#gaps + 1] = say("no_hour", { minutes = minutes }) end
  if cost.steps_unstated > 0 then gaps[#gaps + 1] = say(cost.steps_unstated == 1 and "one_unstated" or "unstated", { n = tostring(math.tointeger(cost.steps_unstated)) }) end
  if not rawget(cost, "portions") then gaps[#gaps + 1] = say("no_portions") end
  return gaps, small
end

function facts_of(fiche)
  local day = tamis.settings.day
  local cost = fiche:cost(day)
  local currency = cost.currency
  -- Where nothing has a price there are no sums.
  for _, key in ipairs({ "food", "hands", "packed", "left_over", "batch" }) do cost[key] = rawget(cost, key) or 0 end
  local out = { title = fiche.title, cost = cost, day = day and say("on_day", { day = day }) or say("latest"), sums = {}, lines = {}, components = {} }
  local rows = gather(cost)
  local at_least = cost.complete and "" or "≥ "
  for _, row in ipairs(rows) do
    local priced = not row.open
    if row.open ~= "trace" and row.open ~= "water" then
      local share = priced and cost.food > 0 and row.cost / cost.food or 0
      out.lines[#out.lines + 1] = { row.name, grams_text(row.grams), grams_text(row.bought),
        priced and money(row.cost, currency) or say(row.open), priced and percent(share) .. " %" or "", row.since or "", share = share }
    end
  end
  local minutes = whole(cost.seconds / 60)
  local portions = rawget(cost, "portions")
  local function sum(key, strong)
    -- What is open in the foods is open in food and all.
    local sign = (key == "food" or key == "batch") and at_least or ""
    out.sums[#out.sums + 1] = { say(key == "batch" and "all" or key), sign .. (cost[key .. "_text"]:gsub(" ", "\u{a0}")),
      portions and sign .. money(cost[key] / portions, currency) or "", strong = strong }
  end
  if currency ~= "" then
    sum("food")
    if cost.hour_known then sum("hands") end
    if cost.packaging[1] then sum("packed") end
    sum("batch", true)
    if cost.left_over > 0.005 then sum("left_over") end
  end
  out.portions = portions and say(cost.pieces and "pieces" or "portions", { n = tamis.number(portions, label_language()) })
  out.one = say(cost.pieces and "piece" or "portion")
  out.sale = {}
  if rawget(cost, "net") then
    out.sale = { { say("price"), (cost.price_text:gsub(" ", "\u{a0}")) }, { say("net"), (cost.net_text:gsub(" ", "\u{a0}")) } }
    if rawget(cost, "food_share") then
      local aim = rawget(cost, "aim")
      local note = aim and say(cost.food_share > aim and "over_aim" or "aim", { share = percent(aim) }) or ""
      out.sale[3] = { say("food_share"), at_least .. percent(cost.food_share) .. " %", note, over = aim and cost.food_share > aim }
      out.sale[4] = { say("share"), at_least .. percent(cost.share) .. " %" }
    end
  end
  for _, of in ipairs(cost.components) do
    if currency ~= "" then out.components[#out.components + 1] = { of.component and of.component.title or "", money(rawget(of, "food") or 0, currency),
      money(rawget(of, "hands") or 0, currency), money(rawget(of, "both") or 0, currency) } end
  end
  local names, share = dominant(rows, cost.food)
  local most_priced = cost.all > 0 and cost.unpriced / cost.all < 0.05
  if names[1] and most_priced then out.dominates = say("first", { names = table.concat(names, ", "), share = whole(100 * share) }) end
  out.hands = cost.hour_known and cost.seconds > 0 and say("hands_time", { minutes = minutes }) or nil
  out.gaps, out.small = gaps_of(cost, rows, minutes)
  return out
end
