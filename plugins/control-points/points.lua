-- What the sheet lists: the control points of the fiche in the order of its work, and those of the components that it takes from
-- other files.

-- "at least 63 °C" and how long it is held, where the words do not say that.
local function limit_of(control)
  local held = {}
  for _, mark in ipairs(control:all("food-temp")) do
    local time = mark:get("for")
    if time and not control.text:find(time, 1, true) then held[#held + 1] = mark.own_text .. ": " .. say("held", { x = time }) end
  end
  local words = control.text
  if held[1] then words = words .. (words:find("[%.!?]$") and " " or "; ") .. "(" .. table.concat(held, "; ") .. ")" end
  return words
end

local function filled(words) return words and tamis.trim(words) ~= "" and tamis.trim(words) or nil end

local function point_of(control, step, source)
  local component = step.component
  local where = component and component.title ~= "" and component.title .. ", " or ""
  return {
    where = where .. say("step", { n = tostring(step.number) }), source = source, hazard = filled(control:get("hazard")), limit = filled(limit_of(control)),
    check = filled(control:get("check")), often = filled(control:get("often")), who = filled(control:get("who")),
    action = filled(control:get("action")), record = filled(control:get("record")),
  }
end

-- Of one component, those of the file it is made from first: that is when they come.
local function gather(component, source, out, seen)
  local linked = component:get("from") and component:linked()
  if linked then
    local from = linked.fiche
    local key = from.path .. "#" .. (linked.id or "")
    if not seen[key] then
      seen[key] = true
      local parts = linked.kind == "component" and { linked } or from:components()
      for _, part in ipairs(parts) do gather(part, from.title, out, seen) end
    end
  elseif component:get("from") then
    out.missing[#out.missing + 1] = component.title
  end
  for _, step in ipairs(component:all("step")) do
    for _, control in ipairs(step:children("control")) do out[#out + 1] = point_of(control, step, source) end
  end
end

function points_of(fiche)
  local out, seen = { missing = {} }, {}
  for _, component in ipairs(fiche:components()) do gather(component, nil, out, seen) end
  return out
end
