-- Sentences: the author's words, with what the marks say put in where the words do not.

local function says(words, phrase)
  return phrase and tamis.lower(words):find(tamis.lower(phrase), 1, true) ~= nil
end

-- Does the sentence say this already, or is there nothing to say? "in the core" needs no "(in the centre)" behind it.
local function already(sentence, key)
  if not has_words(key) then return true end
  if not has_words(key .. "_words") then return false end
  local there = {}
  for _, word in ipairs(tamis.words(tamis.lower(sentence))) do there[word] = true end
  for _, word in ipairs(tamis.words(words_of(key .. "_words"))) do
    if there[word] then return true end
  end
  return false
end

local function in_brackets(list)
  local inside = join(list, ", ", list.n)
  return inside ~= "" and " (" .. inside .. ")" or ""
end

-- What a temperature's attributes add: where it is measured, how long it is held.
local function temperature(mark, sentence)
  local notes = { n = 3 }
  if mark.kind == "food-temp" then
    local place, held = mark:get("place"), mark:get("for")
    if place and not already(sentence, "place_" .. place) then notes[1] = say("place_" .. place) end
    if held and not says(sentence, held) then notes[2] = say("held", { x = figure(held) }) end
  end
  return figures(said(mark)) .. in_brackets(notes)
end

local function oven_temperature(mark, sentence)
  local notes = { n = 5 }
  local mode = mark:get("mode")
  if mode and not already(sentence, "mode_" .. mode) then notes[1] = say("mode_" .. mode) end
  for i, side in ipairs({ "top", "bottom" }) do
    local list = said_of(mark, side)
    if list[1] and not says(sentence, list[1]) then notes[1 + i] = say(side .. "_heat", { x = figures(list) }) end
  end
  local steam = mark:get("steam")
  if steam and not says(sentence, steam) then notes[4] = say("steam_share", { x = figure(steam) }) end
  notes[5] = batch_note(mark, sentence)
  return figures(said(mark)) .. in_brackets(notes)
end

-- A time, and what it is for: another batch, an oven's mode, a depth, an altitude.
local function time(mark, sentence)
  local notes = { n = 4 }
  local mode, depth, altitude = mark:get("mode"), mark:get("depth"), mark:get("altitude")
  if mode and not already(sentence, "mode_" .. mode) then notes[1] = say("mode_" .. mode) end
  if depth and not says(sentence, depth) then notes[2] = say("at_depth", { x = figures(said_of(mark, "depth")) }) end
  if altitude and not says(sentence, altitude) then
    notes[3] = say("altitude", { x = figures(said_of(mark, "altitude")) })
  end
  notes[4] = batch_note(mark, sentence)
  return figures(said(mark)) .. in_brackets(notes)
end

-- "for 100 portions", for what holds for a batch other than the first.
function batch_note(mark, sentence)
  local batch = mark:get("batch")
  local yield = batch and mark.fiche:find(batch)
  if not yield then return nil end
  return say("for", { x = yield_name(yield) })
end

-- What goes in: the words, then how much of it, how warm, how it is.
local function use(mark, sentence, step)
  local notes = { n = 3 }
  if #mark:children("amount") == 0 then notes[1] = amounts_taken(mark, step) end
  local at = said_of(mark, "at")
  if at[1] and #mark:children("food-temp") == 0 and not says(sentence, at[1]) then notes[2] = figures(at) end
  local as = mark:get("as")
  if as and not says(sentence, as) then notes[3] = text(as) end
  return prose(mark:sentence(), step, sentence) .. in_brackets(notes)
end

function gap(mark) return element("span", { class = "gap" }, say("gap", { x = text(mark.text) })) end

local renderers = {
  use = use, time = time, ["oven-temp"] = oven_temperature, ["food-temp"] = temperature, ["medium-temp"] = temperature,
  ["room-temp"] = temperature, gap = gap,
  amount = function(mark, sentence) return figures(said(mark)) .. in_brackets({ n = 1, batch_note(mark, sentence) }) end,
  length = function(mark) return figures(said(mark)) end,
  share = function(mark) return figure(mark.own_text) or "" end,
  ["until"] = function(mark, sentence, step)
    return element("em", { class = "cue" }, prose(mark:sentence(), step, sentence))
  end,
  tool = function(mark) return text(mark.text) end,
}

-- A list of strings and marks, as element:sentence() gives it, as HTML. What a house adds in its own namespace is not
-- ours to print. `whole` is the sentence that the list is a part of, to see what it says already.
function prose(list, step, whole)
  if not whole then
    local all = {}
    for i, run in ipairs(list) do all[i] = type(run) == "string" and run or run.text end
    whole = table.concat(all)
  end
  local out = {}
  for _, run in ipairs(list) do
    if type(run) == "string" then
      out[#out + 1] = text(run)
    else
      local render = renderers[run.kind]
      if render then out[#out + 1] = render(run, whole, step) end
    end
  end
  return tamis.trim(table.concat(out))
end

-- The same of all that an element says in its own sentence.
function prose_of(element, step) return prose(element:sentence(), step) end
