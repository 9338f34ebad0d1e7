-- Figures as a printer sets them: ½ for 1/2, a dash in ranges, no line break between figure and unit.

local no_break = "\u{a0}"
local fractions = {
  ["1/2"] = "½", ["1/3"] = "⅓", ["2/3"] = "⅔", ["1/4"] = "¼", ["3/4"] = "¾", ["1/5"] = "⅕", ["2/5"] = "⅖", ["3/5"] = "⅗",
  ["4/5"] = "⅘", ["1/6"] = "⅙", ["5/6"] = "⅚", ["1/8"] = "⅛", ["3/8"] = "⅜", ["5/8"] = "⅝", ["7/8"] = "⅞",
}
local glyphs = {}
for _, glyph in pairs(fractions) do glyphs[glyph] = true end

local function characters(words)
  local list = {}
  for _, point in utf8.codes(words) do list[#list + 1] = utf8.char(point) end
  return list
end

local longest_unbroken = 24  -- letters; a longer figure in a sentence may break, but not before a unit

local function fraction(over, under)
  return fractions[over .. "/" .. under] or (over .. "\u{2044}" .. under)
end

function typeset(words)
  if not words:find("%d") then return words end
  words = words:gsub("(%d)%s+(%d+)/(%d+)", function(whole, over, under) return whole .. no_break .. fraction(over, under) end)
  words = words:gsub("(%d+)/(%d+)", fraction)
  words = words:gsub("(%d)%s*%-%s*(%d)", "%1–%2")
  local out = characters(words)
  for i = 2, #out do
    if out[i] == " " and (glyphs[out[i - 1]] or out[i - 1]:find("%d")) then out[i] = no_break end
  end
  return table.concat(out)
end

-- A figure in a sentence.
function figure(words)
  if not words or words == "" then return nil end
  local short = tamis.length(words) <= longest_unbroken
  return element("b", { class = short and "figure" or "figure long" }, text(typeset(words)))
end

-- Several spellings of one figure: "300 g / 10 ½ oz".
function figures(list)
  local out = {}
  for i, words in ipairs(list) do out[i] = figure(words) end
  return table.concat(out, " / ")
end

-- Elements whose own text a conversion keeps beside the new one, in `was`.
local keeps_text = { ingredient = true, amount = true, ["food-temp"] = true, ["oven-temp"] = true, ["medium-temp"] = true,
  ["room-temp"] = true, length = true, override = true }

local function add_new(list, words)
  words = words and tamis.trim(words)
  if not words or words == "" or #list == 2 then return end
  for _, there in ipairs(list) do
    if there == words then return end
  end
  list[#list + 1] = words
end

-- What an element's own text says, as one or two spellings: side by side, the author's and its conversion; else the
-- figure and what the author says beside it.
function said(element)
  local list = {}
  if keeps_text[element.kind] then
    if page.side_by_side then add_new(list, element:get("was")) end
    add_new(list, element.own_text)
    add_new(list, element:get("also"))
  else
    add_new(list, element.own_text)
  end
  return list
end

-- The same of an attribute that a conversion keeps as was-<attribute>.
function said_of(element, attribute)
  local list = {}
  if page.side_by_side then add_new(list, element:get("was-" .. attribute)) end
  add_new(list, element:get(attribute))
  return list
end

-- A figure we worked out ourselves, in the kitchen's steps; side by side in both systems.
function worked_out(amount, food)
  local systems = { page.system or "metric" }
  if page.side_by_side then systems[2] = page.other_system end
  local list = {}
  for _, system in ipairs(systems) do
    local rounded = amount:rounded(system, food)
    add_new(list, (rounded or amount):written(page.fiche.language))
  end
  return list
end

-- "1 ½ kg" in two: what stands left of the axis that amounts are lined up on, and the rest. Nil for what is no single
-- figure with a unit ("to taste", "1 lb 2 oz").
function at_the_axis(words)
  local list = characters(typeset(words))
  local i = 1
  while list[i] and list[i]:match("^[%d.,]$") or list[i] == "–" do i = i + 1 end
  local whole, part = table.concat(list, "", 1, i - 1), ""
  local gap = (list[i] == no_break and glyphs[list[i + 1]]) and 1 or 0
  if glyphs[list[i + gap]] then
    part = (gap == 1 and "\u{2009}" or "") .. list[i + gap]
    i = i + gap + 1
  end
  local unit = table.concat(list, "", i)
  if not whole:find("^%d") and part == "" or unit:find("%d") then return nil end
  for j = i, #list do
    if glyphs[list[j]] then return nil end
  end
  local before, decimals = whole:match("^(%d+)([.,]%d+)$")
  if before and #decimals ~= 4 then return before, decimals .. unit end
  return whole, part .. unit
end
