-- How it is made: each step as {name, lead, runs, tail, before, after}; before and after are blocks {kind, heading, runs}.

function step_name(step, letters)
  local letter = step.component and rawget(letters, step.component.number) or ""
  return letter .. step.number
end

-- A gate on what comes in stands before its step, one on what the step makes behind it.
local function stands_before(gate, step)
  local of = gate:get("of")
  if not of then return false end
  for _, made in ipairs(step:makes()) do
    if made == of then return false end
  end
  return true
end

local function lead_of(step)
  local list = {}
  local batch = step:get("batch") and step.fiche:find(step:get("batch"))
  if batch then list[1] = say("for_batch", { x = yield_name(batch) }) end
  if step:get("branch") then list[#list + 1] = say("branch", { x = step:get("branch") }) end
  if step:get("optional") == "yes" then list[#list + 1] = say("optional_step") end
  if step:get("when") then list[#list + 1] = say("only_if", { x = step:get("when") }) end
  return table.concat(list, " ")
end

local function waits(step, letters, add)
  local names = {}
  for id in (step:get("after") or ""):gmatch("%S+") do
    local other = step.fiche:find(id)
    names[#names + 1] = other and other.kind == "step" and step_name(other, letters) or id
  end
  if not names[1] then return end
  for attribute, key in pairs({ ["at-least"] = "not_before", ["at-most"] = "not_after" }) do
    if step:get(attribute) then add(say(key, { x = typeset(step:get(attribute)), step = table.concat(names, ", ") })) end
  end
end

-- What only attributes say and nobody can do without: the cold, the setting, how long it stands.
local function tail_of(step, letters)
  local list, sentence = {}, step.prose
  local function add(words)
    if words then list[#list + 1] = words end
  end
  local key = "on_" .. (step:get("on") or "")
  if has_words(key) and not says_key(sentence, key) then add(say(key)) end
  local setting = step:get("setting")
  if setting and not tamis.lower(sentence):find(tamis.lower(setting), 1, true) then add(setting) end
  if step:get("repeat") then add(say("repeat_times", { n = typeset(step:get("repeat")) })) end
  if step:get("unattended") and #step:all("time") == 0 then add(typeset(step:get("unattended"))) end
  waits(step, letters, add)
  return table.concat(list, ", ")
end

local function control_tail(control)
  local list = {}
  for i, key in ipairs({ "check", "often", "action" }) do
    local value = control:get(key)
    if value then list[#list + 1] = say(key, { x = value }) end
  end
  if not list[1] then return "" end
  return " " .. capital(table.concat(list, "; ")) .. "."
end

local function heading_of(block)
  if block.kind == "control" and block:get("hazard") then return say("control") .. ", " .. block:get("hazard") end
  if block.kind == "rescue" and block:get("when") then return say("rescue_when", { x = block:get("when") }) end
  return say(block.kind)
end

-- Gates and control points are in every wording.
local always = { gate = true, control = true }
local in_full = { gate = true, control = true, done = true, rescue = true }
local on_page = { gate = true, control = true, done = true, rescue = true, why = true, note = true }

function step_of(step, letters, manner)
  local wanted = manner == "short" and always or manner == "page" and on_page or in_full
  local sentence = manner == "short" and step:child("short") or step
  local one = { name = step_name(step, letters), number = step.number, lead = lead_of(step), runs = runs_of(sentence, step), tail = tail_of(step, letters),
    before = {}, after = {}, element = step }
  for _, block in ipairs(step:blocks()) do
    if rawget(wanted, block.kind) then
      local runs = runs_of(block, step)
      if block.kind == "control" then runs[#runs + 1] = { text = control_tail(block) } end
      local list = block.kind == "gate" and stands_before(block, step) and one.before or one.after
      list[#list + 1] = { kind = block.kind, heading = heading_of(block), runs = runs }
    end
  end
  return one
end
