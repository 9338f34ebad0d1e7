-- Sentences as runs of {text, kind}: the author's words, with what the marks say put in where the words do not. A kind is
-- "temperature", "cue", "gap" or nil for plain words.

local function says(sentence, phrase)
  return tamis.lower(sentence):find(tamis.lower(phrase), 1, true) ~= nil
end

-- Does the sentence say this already? "in the core" needs no "(in the centre)" behind it.
function says_key(sentence, key)
  if says(sentence, say(key)) then return true end
  if not has_words(key .. "_words") then return false end
  local there = {}
  for _, word in ipairs(tamis.words(tamis.lower(sentence))) do there[word] = true end
  for _, word in ipairs(tamis.words(say(key .. "_words"))) do
    if rawget(there, word) then return true end
  end
  return false
end

local function bracketed(list, count)
  local inside = join(list, ", ", count)
  return inside ~= "" and " (" .. inside .. ")" or ""
end

local function temperature(mark, sentence)
  local notes = { }
  local function add(attribute, key)
    local value = mark:get(attribute)
    if value and not says(sentence, value) then notes[#notes + 1] = say(key, { x = typeset(value) }) end
  end
  if mark.kind == "oven-temp" then
    local mode = mark:get("mode")
    if mode and not says_key(sentence, "mode_" .. mode) then notes[1] = say("mode_" .. mode) end
    add("top", "top_heat")
    add("bottom", "bottom_heat")
    add("steam", "steam_share")
  elseif mark.kind == "food-temp" then
    local place = mark:get("place")
    if place and not says_key(sentence, "place_" .. place) then notes[1] = say("place_" .. place) end
    add("for", "held")
  end
  return bracketed(notes)
end

-- How much of one ingredient this mark takes, where it is not all of it; nil where the fiche does not say.
local function part_taken(mark, step, ingredient)
  for _, taking in ipairs(step:takes()) do
    if taking.element == mark and taking.thing.element == ingredient and taking.take ~= "all" and taking.take ~= "unstated" then
      if taking.take == "amount" then return typeset(mark:get("take") or "") end
      local amount = ingredient.amount
      local part = taking.take == "share" and taking.share and amount and amount.form ~= "words" and amount * taking.share or taking.mass
      if not part then return nil end
      return (part:rounded(amount and amount.system or ingredient.fiche.system or "metric", ingredient.food) or part):written()
    end
  end
end

local function taken(mark, step)
  if not step or #mark:children("amount") > 0 then return nil end
  local list, targets = {}, mark:targets()
  for _, target in ipairs(targets) do
    local part = target.kind == "ingredient" and part_taken(mark, step, target)
    if part and part ~= "" then list[#list + 1] = #targets > 1 and target.label .. " " .. part or part end
  end
  return list[1] and table.concat(list, ", ")
end

local figures = { amount = true, time = true, length = true, share = true, tool = true }
local temperatures = { ["food-temp"] = true, ["oven-temp"] = true, ["medium-temp"] = true, ["room-temp"] = true }

local function for_batch(mark)
  local batch = mark:get("batch")
  local yield = batch and mark.fiche:find(batch)
  return yield and " (" .. say("for", { x = yield_name(yield) }) .. ")" or ""
end

local add_runs

local function add_mark(out, mark, step, sentence)
  local function add(text, kind) out[#out + 1] = { text = text, kind = kind } end
  if rawget(temperatures, mark.kind) then
    add(figure_of(mark), "temperature")
    add(temperature(mark, sentence))
  elseif rawget(figures, mark.kind) then
    add(mark.kind == "tool" and mark.text or figure_of(mark))
    if mark.kind == "amount" or mark.kind == "time" then add(for_batch(mark)) end
  elseif mark.kind == "use" then
    add_runs(out, mark:sentence(), step, sentence)
    local at, as = mark:get("at"), mark:get("as")
    local how_warm = at and not says(sentence, at)
    add(bracketed({ taken(mark, step), as and not says(sentence, as) and as or nil }, 2))
    if how_warm then
      add(" (")
      add(typeset(at), "temperature")
      add(")")
    end
  elseif mark.kind == "until" then
    local inner = {}
    add_runs(inner, mark:sentence(), step, sentence)
    for _, run in ipairs(inner) do out[#out + 1] = { text = run.text, kind = run.kind or "cue" } end
  elseif mark.kind == "gap" then
    add("[" .. say("gap", { x = mark.text }) .. "]", "gap")
  end
end

add_runs = function(out, list, step, sentence)
  for _, one in ipairs(list) do
    if type(one) == "string" then
      out[#out + 1] = { text = typeset_inside(one) }
    else
      add_mark(out, one, step, sentence)
    end
  end
end

-- Figures in plain words, the white space at their ends kept.
function typeset_inside(text)
  local before, inside, after = text:match("^(%s*)(.-)(%s*)$")
  return before .. typeset(inside) .. after
end

-- All that an element says in its own sentence.
function runs_of(element, step)
  local out = {}
  add_runs(out, element:sentence(), step, element.prose)
  return out
end

function plain(runs)
  local out = {}
  for i, run in ipairs(runs) do out[i] = run.text end
  return tamis.trim((table.concat(out):gsub("[ \n\t]+", " ")))
end
