-- Figures and words as the list has them, in the language of the house.

local chosen, language = nil, "en"

-- The house's language; without a kitchen file that of the first dish.
function speak_for(fiches)
  local wanted = tamis.kitchen.root and tamis.kitchen.language or fiches[1].language
  language = wanted:match("^%a+") or "en"
  if not rawget(words, language) then language = "en" end
  chosen = words[language]
end

function order_language() return language end

function say(key, values)
  return (chosen[key]:gsub("{(%w+)}", values or {}))
end

-- Grams in kilograms to three places, small units to one; what that would make nought keeps three figures. false stays.
function rounded(value, unit)
  if not value then return false end
  local places = (unit == "g" or unit == "ml" or unit == "pc") and 1 or 3
  local figure = math.floor(value * 10 ^ places + 0.5) / 10 ^ places
  if figure == 0 and value > 0 then figure = tonumber(string.format("%.3g", value)) end
  return figure
end

-- "2", "2.5", "0.0035": with a point, without an exponent.
function plain(number)
  local text = string.format("%.6f", number):gsub("0+$", ""):gsub("%.$", "")
  return text
end

-- As people of the house write it: "2,5".
function written(number) return tamis.number(number, language) end

function money(number) return string.format("%.2f", number) end

function unit_name(unit) return unit == "pc" and say("pc") or unit end

-- "1.2 kg", "7 g"
function quantity(value, unit)
  if (unit == "kg" or unit == "l") and value < 1 then value, unit = value * 1000, unit == "kg" and "g" or "ml" end
  return written(rounded(value, unit)) .. "\u{a0}" .. unit_name(unit)
end

-- "Damson tart 1.2 kg; Quince bay 300 g": who gets how much of what is handed out; of one alone its name.
function dishes_of(row)
  local out = {}
  local only = row.dishes[1]
  if not row.dishes[2] and not rawget(only, "part") then return only.title end
  for i, dish in ipairs(row.dishes) do
    local part = rawget(dish, "part")
    local name = part and dish.title .. " (" .. part .. ")" or dish.title
    local unit, per_unit = row.unit, row.per_unit
    if part then unit, per_unit = "g", 1 end
    out[i] = dish.grams > 0 and unit and name .. " " .. quantity(dish.grams / per_unit, unit) or name
  end
  return table.concat(out, "; ")
end

-- "2 egg white (66 g)": what is left of eggs of which only the yolk was wanted.
function parts_left(row)
  local out = {}
  for i, left in ipairs(row.left_parts or {}) do
    local count = left.count < 0.95 and math.floor(left.count * 10 + 0.5) / 10 or math.floor(left.count + 0.05)
    out[i] = say("part", { n = written(count), name = left.name, grams = written(math.floor(left.grams + 0.5)) })
  end
  return table.concat(out, "; ")
end
