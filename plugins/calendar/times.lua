-- When each dish's steps are done. A dish is ready at service; a base that another named dish takes, when that one needs it.

local function later_revisions(fiches)
  local out = {}
  for _, fiche in ipairs(fiches) do
    local same
    for i, known in ipairs(out) do
      if fiche.id ~= "" and known.id == fiche.id then same = i end
    end
    if not same then
      out[#out + 1] = fiche
    elseif (tonumber(fiche.root:get("revision")) or 0) > (tonumber(out[same].root:get("revision")) or 0) then
      out[same] = fiche
    end
  end
  return out
end

-- What the dish takes from other files: list of {label, mass, path, steps that take it}.
local function needs_of(fiche)
  local out = {}
  for _, thing in ipairs(fiche:things()) do
    local element = thing.element
    local outside = (thing.kind == "ingredient" or thing.kind == "component") and element:get("from")
    if outside and not thing.maker then
      local linked = element:linked()
      local steps = {}
      for _, taking in ipairs(thing:takings()) do steps[#steps + 1] = taking.step end
      if steps[1] then
        out[#out + 1] = { label = thing.label, mass = thing.mass, path = linked and linked.fiche.path or "", steps = steps }
      end
    end
  end
  return out
end

local function lay(dish, service)
  local days, rest = split_days(dish.ready or service.seconds)
  local slots = dish.fiche:timetable(clock_of(rest))
  if not slots then
    dish.fiche:say(nil, say("does_not_fit"), say("does_not_fit_advice"))
    return false
  end
  for _, slot in ipairs(slots) do
    slot.start = slot.start + days * 86400
    slot.finish = slot.finish + days * 86400
  end
  dish.slots = slots
  for _, need in ipairs(dish.needs) do
    for _, slot in ipairs(slots) do
      for _, step in ipairs(need.steps) do
        if slot.step == step and (not need.at or slot.start < need.at) then need.at = slot.start end
      end
    end
  end
  return true
end

-- Steps without a stated time and work outside the house's hours are said, once for each dish.
local function tell(dish)
  local unstated, first = 0, nil
  for _, slot in ipairs(dish.slots) do
    if not slot.stated then
      unstated = unstated + 1
      first = first or slot.step
    end
    if slot.out_of_hours then
      local _, rest = split_days(slot.start)
      dish.fiche:say(slot.step, say("out_of_hours", { clock = clock_of(rest) }), say("out_of_hours_advice"))
    end
  end
  if first then dish.fiche:say(first, say(unstated == 1 and "one_unstated" or "unstated", { n = tostring(unstated) }), say("unstated_advice")) end
end

-- Whether some dish that is not laid out yet takes this one.
local function still_wanted(dish, dishes)
  for _, other in ipairs(dishes) do
    if other ~= dish and not other.slots then
      for _, need in ipairs(other.needs) do
        if need.path == dish.fiche.path then return true end
      end
    end
  end
  return false
end

local function next_of(dishes)
  local any
  for _, dish in ipairs(dishes) do
    if not dish.slots then
      any = any or dish
      if not still_wanted(dish, dishes) then return dish end
    end
  end
  return any
end

-- List of {fiche, slots, needs, ready}; nil when a dish cannot be laid out, which was said.
function laid_out(fiches, service)
  local dishes = {}
  for i, fiche in ipairs(later_revisions(fiches)) do
    dishes[i] = { fiche = fiche, needs = needs_of(fiche), slots = false, ready = false }
    for _, need in ipairs(dishes[i].needs) do need.at = false end
  end
  for _ = 1, #dishes do
    local dish = next_of(dishes)
    for _, other in ipairs(dishes) do
      for _, need in ipairs(other.needs) do
        if need.at and need.path == dish.fiche.path and (not dish.ready or need.at < dish.ready) then dish.ready = need.at end
      end
    end
    if not lay(dish, service) then return nil end
    tell(dish)
  end
  return dishes
end
