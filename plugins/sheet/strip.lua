-- The strip at the top: gates and control points of the whole sheet, in the order of the work.

local most_letters = 44

-- A figure the gate states, else its first words.
local function short_words(block)
  local prose = block.prose
  if tamis.length(prose) <= most_letters then return text((prose:gsub("[.;:]$", ""))) end
  local figures_of = {}
  for _, mark in ipairs(block:sentence()) do
    local kind = type(mark) ~= "string" and mark.kind
    if kind == "food-temp" or kind == "medium-temp" or kind == "oven-temp" or kind == "amount" or kind == "length" or kind == "time" then
      figures_of[#figures_of + 1] = figures(said(mark))
    end
  end
  if figures_of[1] then return table.concat(figures_of, ", ") end
  local words = ""
  for word in prose:gmatch("%S+") do
    if tamis.length(words) + tamis.length(word) + 1 > most_letters then break end
    words = words == "" and word or words .. " " .. word
  end
  return text(words) .. "\u{a0}…"
end

local function item(block, step)
  local control = block.kind == "control"
  local hazard = control and block:get("hazard")
  return element("li", { class = control and "stop" or "go" }, element("b", nil, step_name(step)), " ",
    hazard and element("span", { class = "hazard" }, text(hazard) .. colon()) .. " " or nil, short_words(block))
end

function strip_html(fiche)
  if not tamis.settings.strip then return "" end
  local list = {}
  for _, step in ipairs(fiche:steps()) do
    for _, block in ipairs(step:blocks()) do
      if block.kind == "gate" or block.kind == "control" then list[#list + 1] = item(block, step) end
    end
  end
  if not list[1] then return "" end
  return element("section", { class = "strip", ["aria-labelledby"] = "points" }, element("h2", { id = "points" }, say("points")),
    element("ol", nil, table.concat(list, " ")))
end
