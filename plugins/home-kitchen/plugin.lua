-- From the professional kitchen to the one at home. Only what is sure is changed, and the author's figure stays in was; the
-- rest is said in notes of kind "home". Twice is the same as once.
local settings = tamis.settings
local chosen

local function say(key, values) return (chosen[key]:gsub("{(%w+)}", values or {})) end

local function add_note(element, key, words)
  if not chosen then return end
  words = words or say(key)
  for _, note in ipairs(element:children("note")) do
    if note:get("kind") == "home" and note.text == words then return end
  end
  local note = element:add("note")
  note:set("kind", "home")
  note:set_text(words)
end

-- As a fiche has it: with spaces that break.
local function spaced(amount) return (amount:written():gsub("\u{a0}", " ")) end

-- ------------------------------------------------------------------ spoons

local function join(list)
  local out = {}
  for i = 1, 2 do out[#out + 1] = rawget(list, i) end
  return table.concat(out, " ")
end

local off_at_most = 0.05  -- share by which spoons may miss the figure they stand beside

local function near(spoon, exact) return spoon and math.abs(spoon.middle / exact.middle - 1) <= off_at_most end

local function with_part(whole, part) return whole > 0 and (part ~= "" and whole .. " " .. part or tostring(whole)) or part end

local quarters = { "", "1/4", "1/2", "3/4" }

-- Whole and half tablespoons (15 ml) from one on; else tablespoons and quarters of a teaspoon (5 ml), the smallest that every
-- set of spoons has. Nil where they can't hold the figure.
local function in_spoons(exact)
  local ml = exact.middle
  if ml >= 15 then
    local halves = math.floor(ml / 7.5 + 0.5)
    local spoon = tamis.amount(with_part(halves // 2, quarters[1 + 2 * (halves % 2)]) .. " tbsp", "metric")
    if near(spoon, exact) then return spoon end
  end
  local left = math.floor(ml / 1.25 + 0.5)
  local tablespoons = left // 12
  left = left % 12
  local teaspoons = left > 0 and with_part(left // 4, quarters[1 + left % 4]) .. " tsp" or nil
  local words = join({ tablespoons > 0 and tablespoons .. " tbsp" or nil, teaspoons })
  local spoon = words ~= "" and tamis.amount(words, "metric")
  return near(spoon, exact) and spoon or nil
end

local lightest = 0.35  -- g/ml; lighter ones are leaves and sprigs, which fill a spoon as they please

-- Spoons beside grams, by the food's density; eggs are counted.
local function spoons(ingredient)
  local amount, food = ingredient.amount, ingredient.food
  if not amount or not food or amount.form ~= "exact" or amount.kind ~= "mass" then return end
  if ingredient:get("also") or ingredient:get("was-also") or ingredient:get("pieces") then return end
  local density = food:density()
  if not density or density < lightest or amount.middle / density > settings.spoons then return end
  local exact = tamis.amount(string.format("%.4f ml", amount.middle / density))
  local spoon = exact and exact.middle > 0 and in_spoons(exact)
  if spoon then ingredient:set("also", spaced(spoon)) end
end

-- ------------------------------------------------------------------ oven

-- A static oven is set 20 °C, or 25 °F, higher than a fan one (common practice, as the built-in conversion does).
local function oven(mark)
  local mode, step = mark:get("mode"), mark.parent
  while step and step.kind ~= "step" do step = step.parent end
  if step and mode == "deck" then add_note(step, "deck") end
  if step and (mode == "steam" or mark:get("steam")) then add_note(step, "steam") end
  if mode ~= "fan" or settings.oven ~= "static" or mark:get("was-mode") or mark:get("also") then return end
  local value = mark:value()
  if not value or value.form == "words" then return end
  local higher = value + (tamis.amount(value.unit == "degf" and "225 °F" or "120 °C") - tamis.amount(value.unit == "degf" and "200 °F" or "100 °C"))
  mark:set("was", mark.own_text)
  mark:set("was-mode", "fan")
  mark:set("mode", "static")
  mark:set_text(spaced(higher))
end

-- ------------------------------------------------------------------ machines

local function machines_in(step)
  for _, action in ipairs(step:actions()) do
    if action == "churn" then add_note(step, "churn") end
  end
  local prose = tamis.lower(step.prose)
  for _, machine in ipairs(machines) do
    local named = rawget(machine, "on") and step:get("on") == machine.on
    for _, word in ipairs(machine.words) do named = named or prose:find(word, 1, true) end
    if named then add_note(step, machine.key) end
  end
end

-- Leaves are sold at several strengths and weights.
local function gelatine(ingredient)
  local bloom = ingredient:get("bloom")
  if bloom and chosen then add_note(ingredient, nil, say("gelatine", { bloom = bloom })) end
end

function home_kitchen(fiche)
  chosen = rawget(words, tamis.lower(fiche.language:match("^%a+") or ""))
  if settings.spoons > 0 and fiche.system == "metric" then
    for _, ingredient in ipairs(fiche:ingredients()) do spoons(ingredient) end
  end
  for _, ingredient in ipairs(fiche:ingredients()) do gelatine(ingredient) end
  for _, mark in ipairs(fiche:all("oven-temp")) do oven(mark) end
  for _, step in ipairs(fiche:steps()) do machines_in(step) end
  for _, mould in ipairs(fiche:all("mould")) do
    local words = chosen and tins_for(mould, say)
    if words then add_note(mould, nil, words) end
  end
end
