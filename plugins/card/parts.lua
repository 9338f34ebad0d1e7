-- The recipes of other files that go into this one, each once, those behind them too: {component, makes, take, fiche, id}.

local deepest = 4

local function yield_of(component, fiche)
  local yield = component:child("yield")
  if not yield and #fiche:components() == 1 then yield = fiche:yields()[1] end
  return yield and yield_name(yield)
end

-- A component that another file makes is found by itself, what stands in it by its lines.
local function places_of(component)
  local places = component:all("ingredient")
  table.insert(places, 1, component)
  return places
end

function parts_of(fiche)
  local list, seen = {}, {}
  local collect
  local function add(component, linked, take, depth)
    local key = linked.fiche.id .. "#" .. (component.id or component.title)
    if rawget(seen, key) then return end
    seen[key] = true
    list[#list + 1] = { component = component_of(component, {}, "page"), makes = yield_of(component, linked.fiche), fiche = linked.fiche,
      take = linked.kind == "component" and take ~= "" and typeset(take) or nil, id = "recipe-" .. #list + 1 }
    if depth < deepest then collect(component, depth + 1) end
  end
  collect = function(from, depth)
    for _, place in ipairs(places_of(from)) do
      local linked = place:get("from") and place:linked()
      if linked then
        local take = place.kind == "component" and place:get("take") or place.kind == "ingredient" and place.own_text or ""
        for _, component in ipairs(linked.kind == "component" and { linked } or linked.fiche:components()) do add(component, linked, take, depth) end
      end
    end
  end
  for _, component in ipairs(fiche:components()) do collect(component, 1) end
  return list
end
