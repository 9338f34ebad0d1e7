-- What many dishes together take from the store and the suppliers: wanted.lua says how much of each is made, lines.lua
-- gathers it food by food, whole.lua lets yolk and white come of one egg, packs.lua makes packs of it.

local function order_of(fiches)
  speak_for(fiches)
  local made = wanted_of(fiches)
  if not made then return nil end
  local rows, bases, water = gathered(made)
  for _, row in ipairs(rows) do to_packs(row) end
  table.sort(rows, function(a, b)
    if a.supplier ~= b.supplier then
      if a.supplier == "" or b.supplier == "" then return b.supplier == "" end
      return a.supplier < b.supplier
    end
    if a.listed ~= b.listed then return a.listed end
    return tamis.lower(a.name) < tamis.lower(b.name)
  end)
  return { made = made, rows = rows, bases = bases, water = water }
end

function order(fiches)
  local list = order_of(fiches)
  return list and csv_of(list)
end

function order_text(fiches)
  local list = order_of(fiches)
  return list and text_of(list)
end
