-- The steps: gates first, then the sentence with where and how long, then what belongs to it.

-- A gate on what comes in stands before its step, one on what the step makes behind it: a bar across the way either way.
local function stands_before(gate, step)
  local of = gate:get("of")
  if not of then return false end
  for _, made in ipairs(step:makes()) do
    if made == of then return false end
  end
  return true
end

local function gate_html(gate, step)
  return element("div", { class = "gate" }, element("h3", nil, say("gate")), element("p", nil, prose_of(gate, step)))
end

-- Who answers for what at a control point; a control that lacks something shows that it does.
local function control_html(control, step)
  local facts = {}
  for _, attribute in ipairs({ "check", "often", "who", "action", "record" }) do
    local says = control:get(attribute)
    if says then
      facts[#facts + 1] = element("div", nil, element("dt", nil, say(attribute)), element("dd", nil, text(says)))
    end
  end
  local hazard = control:get("hazard")
  local blanks = {}
  for i, key in ipairs({ "reading", "time", "initials" }) do blanks[i] = element("span", nil, say(key)) end
  return element("div", { class = "control" },
    element("h3", nil, hazard and say("control_of", { x = text(hazard) }) or say("control")),
    element("p", { class = "limit" }, prose_of(control, step)),
    element_if("dl", nil, table.concat(facts)),
    element("p", { class = "pencil", ["aria-hidden"] = "true" }, table.concat(blanks)))
end

function titled(heading, html) return element("p", { class = "more" }, element("b", nil, heading), " ", html) end

function loss_html(loss)
  local what, words = loss:get("what") or "other", loss.own_text
  local list = { figures(said_of(loss, "amount")) }
  if what ~= "other" or words == "" then list[2] = say_value("lost_", what) end
  return join(list, " ", 2) .. (words ~= "" and colon() .. " " .. text(words) or "")
end

local blocks = {
  gate = gate_html,
  control = control_html,
  done = function(block, step) return titled(say("done") .. colon(), prose_of(block, step)) end,
  rescue = function(block, step)
    local when = block:get("when")
    return titled((when and say("rescue_when", { x = text(when) }) or say("rescue")) .. colon(), prose_of(block, step))
  end,
  why = function(block, step) return titled(say("why") .. colon(), prose_of(block, step)) end,
  note = function(block, step) return titled(say("note") .. colon(), prose_of(block, step)) end,
  loss = function(block) return titled(say("loss") .. colon(), loss_html(block)) end,
  photo = function(block) return photo_html(block) end,
}
-- What each wording leaves out. Gates and control points are in all of them.
local left_out = {
  full = { why = true },
  learner = {},
  short = { why = true, done = true, rescue = true, note = true, photo = true },
}

local function sentence(step)
  local other = page.wording ~= "full" and step:child(page.wording)
  return prose((other or step):sentence(), step)
end

-- The place by the name that this house gives it.
local function place(step)
  local on = step:get("on")
  if not on then return nil end
  local equipment = step.fiche:find(on)
  if equipment and equipment.kind == "equipment" then return text(equipment.label) end
  for _, machine in ipairs(tamis.kitchen:all("oven", "machine", "cold", "hob")) do
    if machine:get("id") == on and machine.kind ~= "hob" and machine.kind ~= "cold" and machine:get("name") then
      return text(machine:get("name"))
    end
  end
  return say_value("on_", on)
end

-- "12 min"; a trade word with what this house means by it: "overnight, 10–16 h".
local function length_of(step, attribute)
  local amount = step:value(attribute)
  local words = figure(step:get(attribute))
  local meaning = amount and amount.words and tamis.kitchen:meaning(step:get(attribute))
  return meaning and words .. ", " .. figure(meaning:written(page.fiche.language)) or words
end

local function waits(step, add)
  local ids = step:get("after")
  if not ids then return end
  local least, most = step:get("at-least"), step:get("at-most")
  if not (least or most) then return end
  local names = {}
  for id in ids:gmatch("%S+") do
    local other = step.fiche:find(id)
    names[#names + 1] = other and other.kind == "step" and step_name(other) or text(id)
  end
  local name = table.concat(names, ", ")
  if least then add(say("not_before", { x = figure(least), step = name })) end
  if most then add(say("not_after", { x = figure(most), step = name })) end
end

-- Where, how, by whom, how long: what a cook looks for at the right-hand edge.
local function where(step, words)
  local list = {}
  local function add(html)
    if html and html ~= "" then list[#list + 1] = element("span", nil, html) end
  end
  local function add_new(attribute, key)
    local value = step:get(attribute)
    if value and not tamis.lower(words):find(tamis.lower(value), 1, true) then
      add(key and say(key, { x = text(value) }) or text(value))
    end
  end
  local on = place(step)
  if on then add(element("b", { class = "place" }, on)) end
  add_new("setting")
  add_new("shelf", "shelf")
  if step:get("load") then add(say("loads", { x = figure(step:get("load")) })) end
  if step:get("repeat") then add(say("repeat_times", { x = figure(step:get("repeat")) })) end
  add_new("place")
  add_new("who")
  if step:get("hands") then add(say("hands", { x = length_of(step, "hands") })) end
  if step:get("unattended") then add(say("unattended", { x = length_of(step, "unattended") })) end
  waits(step, add)
  local day = step:get("day")
  if day and day ~= (step.component and step.component:get("day")) then add(say("day", { n = figure(day) })) end
  return element_if("span", { class = "where" }, table.concat(list, " "))
end

-- What must be known before the sentence: only if, one of several ways, by choice, for which batch.
local function condition(step)
  local list = {}
  local function add(key, value) list[#list + 1] = "<b>" .. say(key, { x = value }) .. "</b>" end
  if step:get("batch") then
    local yield = step.fiche:find(step:get("batch"))
    if yield then add("for_batch", yield_name(yield)) end
  end
  if step:get("branch") then add("branch", text(step:get("branch"))) end
  if step:get("optional") == "yes" then add("optional_step") end
  if step:get("when") then add("only_if", text(step:get("when"))) end
  return list[1] and table.concat(list, " ") .. " " or ""
end

function step_html(step)
  local before, after = {}, {}
  for _, block in ipairs(step:blocks()) do
    local render = blocks[block.kind]
    if render and not left_out[page.wording][block.kind] then
      local list = block.kind == "gate" and stands_before(block, step) and before or after
      list[#list + 1] = render(block, step)
    end
  end
  local html = condition(step) .. sentence(step)
  return element("li", nil, table.concat(before),
    element("span", { class = "number" }, step_name(step)),
    element("p", nil, html, " ", where(step, step.text)),
    table.concat(after))
end
