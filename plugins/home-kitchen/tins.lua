-- Tins that are sold for homes (common practice); how much of the fiche's mould each takes at the same height, by area.
local of_system = {
  metric = { unit = "cm", cm = 1, sides = { { 33, 23 }, { 23, 23 }, { 20, 20 } }, rounds = { 28, 26, 24, 23, 20, 18 } },
  us = { unit = "in", cm = 2.54, sides = { { 13, 9 }, { 9, 9 }, { 8, 8 } }, rounds = { 10, 9, 8 } },
}

local function cm(mould, attribute)
  local length = mould:value(attribute)
  if tamis.type(length) == "table" then length = length[1] end
  return length and length.form == "exact" and length:number("cm") or nil
end

local function close(factor) return factor > 0.98 and factor < 1.02 end

local function size_of(tin, unit)
  if type(tin) == "number" then return "⌀\u{a0}" .. tin .. "\u{a0}" .. unit end
  return tin[1] .. " × " .. tin[2] .. "\u{a0}" .. unit
end

-- The tins, that which is nearest in area first.
local function candidates(tins, area, area_of)
  local list = {}
  for _, tin in ipairs(tins) do list[#list + 1] = { tin = tin, factor = area_of(tin) / area } end
  table.sort(list, function(a, b) return math.abs(math.log(a.factor)) < math.abs(math.log(b.factor)) end)
  return list
end

-- What may be said of one mould; nil where nothing is sure: small moulds, and shapes that are not straight up.
function tins_for(mould, say)
  local shape, list = mould:get("shape"), nil
  local home = of_system[mould.fiche.system == "metric" and "metric" or "us"]
  if shape == "round" or shape == "ring" then
    local diameter = cm(mould, "diameter")
    if not diameter or diameter < 15 then return nil end
    list = candidates(home.rounds, diameter * diameter, function(tin) return (tin * home.cm) ^ 2 end)
  elseif shape == "frame" or shape == "tray" or shape == "rectangular" or shape == "square" then
    local length, width = cm(mould, "length"), cm(mould, "width")
    if shape == "square" then width = width or length end
    if not length or not width or length * width < 500 then return nil end
    list = candidates(home.sides, length * width, function(tin) return tin[1] * tin[2] * home.cm ^ 2 end)
  else
    return nil
  end
  local out = {}
  for i = 1, close(list[1].factor) and 1 or 2 do
    local factor = math.floor(list[i].factor * 100 + 0.5) / 100
    local size = size_of(list[i].tin, home.unit)
    out[i] = close(list[i].factor) and say("same", { size = size }) or say("tin", { size = size, factor = tamis.number(factor) })
  end
  return say("tins", { list = table.concat(out, "; ") })
end
