-- What stands in the calendar: steps, what must be ready from other files, and service.

local function slug(words)
  local out = tamis.lower(words):gsub("[^%w]+", "-"):gsub("^%-+", ""):gsub("%-+$", "")
  return out ~= "" and out or "kitchen"
end

local function place_named(id)
  for _, one in ipairs(tamis.kitchen:all("oven", "machine")) do
    if one:get("id") == id then return one:get("name") or id end
  end
  return id
end

-- "8 min hands-on, 18 min waiting"; "no time stated".
local function times_of(slot)
  local out = {}
  for _, key in ipairs({ "hands", "unattended" }) do
    local amount = slot.step:value(key)
    if tamis.type(amount) == "amount" then out[#out + 1] = say(key, { time = amount:written(calendar_language()) }) end
  end
  if not slot.stated then out[#out + 1] = say("not_stated") end
  return table.concat(out, ", ")
end

local function description_of(slot)
  local out = { slot.step.prose }
  for _, block in ipairs(slot.step:children("done", "gate", "control")) do
    out[#out + 1] = say(block.kind) .. ": " .. block.text
    if block.kind == "control" and block:get("action") then out[#out + 1] = say("action") .. ": " .. block:get("action") end
  end
  local times = times_of(slot)
  if times ~= "" then out[#out + 1] = times end
  return table.concat(out, "\n")
end

-- "Sweet pastry: chill"; without a word for what is done its first words.
local function summary_of(step, dish)
  local component = step.component
  local where = component and component.title ~= "" and component.title or dish.fiche.title
  local what = table.concat(step:actions(), ", ")
  if what == "" then what = step.prose:sub(1, 48):gsub("%s+%S*$", "") end
  local summary = where .. ": " .. what
  return where ~= dish.fiche.title and summary .. " – " .. dish.fiche.title or summary
end

local function key_of(step)
  if step.id then return step.id end
  local component = step.component
  local part = component and (component.id or "c" .. math.tointeger(component.number)) .. "." or ""
  return part .. math.tointeger(step.number)
end

-- List of {uid, start, finish?, summary, description?, place?, dish}, as they begin.
function events_of(dishes, service)
  local events, taken = {}, {}
  local house = slug(tamis.kitchen.name) .. ".invalid"
  local day = stamp_of(service, 0):sub(1, 8)
  local function add(dish, key, event)
    local uid = slug(dish.fiche.id ~= "" and dish.fiche.id or dish.fiche.title) .. "." .. key .. "." .. day
    while rawget(taken, uid) do uid = uid .. ".2" end
    taken[uid] = true
    event.uid, event.dish = uid .. "@" .. house, dish.fiche.title
    events[#events + 1] = event
  end
  for _, dish in ipairs(dishes) do
    for _, slot in ipairs(dish.slots) do
      local on = slot.step:get("on")
      add(dish, key_of(slot.step), { start = slot.start, finish = slot.finish > slot.start and slot.finish or false, place = on and place_named(on) or false,
        summary = summary_of(slot.step, dish), description = description_of(slot) })
    end
    for i, need in ipairs(dish.needs) do
      if need.at then
        local what = need.mass and need.mass:written(calendar_language()) .. " " .. need.label or need.label
        add(dish, "ready." .. i, { start = need.at, finish = false, place = false, description = false,
          summary = say("ready", { what = what }) .. " – " .. dish.fiche.title })
      end
    end
    if not dish.ready then
      add(dish, "service", { start = service.seconds, finish = false, place = false, description = false,
        summary = say("service") .. ": " .. dish.fiche.title })
    end
  end
  table.sort(events, function(a, b) return a.start < b.start end)
  return events
end
