-- What the card and the page say of their own, in the language of the fiche; figures as a printer sets them.

local chosen, language, foreign = nil, "en", false

function speak(fiche)
  for _, tag in ipairs({ fiche.language, tamis.kitchen.language, "en" }) do
    language = tamis.lower((tag or ""):match("^%a+") or "")
    chosen = rawget(words, language)
    if chosen then break end
  end
  foreign = language ~= tamis.lower(fiche.language:match("^%a+") or language)
end

-- The language of our own words, and whether it is another than the author's.
function own_language() return language, foreign end

function has_words(key) return rawget(chosen, key) ~= nil end

function say(key, values) return (chosen[key]:gsub("{(%w+)}", values or {})) end

function allergen_name(id)
  local own = rawget(allergen_names, language)
  if own then return rawget(own, id) or id end
  local known, name = pcall(tamis.allergen, id, language)
  return known and name or id
end

local fractions = { ["1/2"] = "½", ["1/3"] = "⅓", ["2/3"] = "⅔", ["1/4"] = "¼", ["3/4"] = "¾", ["1/8"] = "⅛", ["3/8"] = "⅜",
  ["5/8"] = "⅝", ["7/8"] = "⅞" }
local units = { g = true, kg = true, mg = true, ml = true, cl = true, l = true, cm = true, mm = true, min = true, h = true, s = true,
  ["°C"] = true, ["°F"] = true, ["%"] = true, oz = true, lb = true, ["in"] = true }

-- "1 1/2 cups" as "1 ½ cups", "82-84" with a dash, the unit never parted from its figure.
function typeset(text)
  text = tamis.trim(text)
  if not text:find("%d") then return text end
  text = text:gsub("%f[%d](%d/%d)%f[^%d]", fractions)
  text = text:gsub("(%d)%s*%-%s*(%d)", "%1–%2")
  return (text:gsub("(%d) ([^%s%d,;.()]+)", function(figure, unit) return rawget(units, unit) and figure .. "\u{a0}" .. unit end))
end

-- Elements that may state their figure in a second system.
local in_two = { ingredient = true, amount = true, ["food-temp"] = true, ["oven-temp"] = true, ["medium-temp"] = true, ["room-temp"] = true,
  length = true, override = true }

-- The spellings of an element's own figure: "300 g", "300 g / 10 ½ oz" where the author states both.
function figure_of(element, attribute)
  local figure = attribute and element:get(attribute) or not attribute and element.own_text or ""
  figure = typeset(figure)
  local also = not attribute and figure ~= "" and rawget(in_two, element.kind) and element:get("also")
  return also and figure .. " / " .. typeset(also) or figure
end

-- As the start of a sentence.
function capital(words)
  local first = words:match("^" .. utf8.charpattern)
  return tamis.upper(first) .. words:sub(#first + 1)
end

-- What the list holds, without the gaps.
function join(list, between, count)
  local out = {}
  for i = 1, count or #list do
    local one = rawget(list, i)
    if one and one ~= "" then out[#out + 1] = one end
  end
  return table.concat(out, between)
end
