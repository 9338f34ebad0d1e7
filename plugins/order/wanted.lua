-- How much of each dish is made.

-- A figure above nought that an attribute states; of a range its middle.
local function figure(yield, attribute)
  local value = yield and yield:value(attribute)
  if tamis.type(value) == "amount" then value = value.middle end
  return type(value) == "number" and value > 0 and value or nil
end

-- Batches of a fiche for "48", "2x" or "3kg"; nil and why where the fiche does not say what a batch comes to.
local function batches_for(fiche, what)
  local times = what:match("^(%d+%.?%d*)x$") or what:match("^(%d+%.?%d*)×$")
  if times then return tonumber(times), say("batches", { n = times }) end
  local yield = fiche:yields()[1]
  if what:match("^%d+%.?%d*$") then
    local portions = figure(yield, "portions")
    local count = portions or figure(yield, "pieces")
    if not count then return nil, say("no_portions", { what = what }) end
    return tonumber(what) / count, say(portions and "portions" or "pieces", { n = what })
  end
  local amount = tamis.amount(what)
  if not amount or amount.kind ~= "mass" or not amount.middle then return nil, say("not_read", { what = what }) end
  local mass = yield and yield:value("mass")
  if not mass or mass.kind ~= "mass" or not mass.middle then mass = fiche.mass end
  if not mass or not mass.middle or mass.middle <= 0 then return nil, say("no_mass_made", { what = what }) end
  return amount.middle / mass.middle, amount:written(order_language())
end

local function ids_of(fiches)
  local ids = {}
  for i, fiche in ipairs(fiches) do ids[i] = fiche.id end
  return ids
end

-- What `make` says, by the fiche's place in the list; nil when it cannot be followed, which was said.
local function asked_of(fiches)
  local asked = {}
  for _, word in ipairs(tamis.settings.make) do
    local id, what = word:match("^([^=]+)=(.+)$")
    if not id then
      fiches[1]:say(nil, say("make_form", { word = word }), say("make_form_advice"))
      return nil
    end
    local found = false
    for i, fiche in ipairs(fiches) do
      if fiche.id == id then
        asked[i] = what
        found = true
      end
    end
    if not found then
      local near = tamis.nearest(id, ids_of(fiches))
      fiches[1]:say(nil, say("make_unknown", { id = id }), near and say("meant", { id = near }) or say("name_it", { id = id }))
      return nil
    end
  end
  return asked
end

-- A base named beside the dishes that take it is in them already: it is counted by itself only when `make` says how much.
local function left_to_others(made)
  for i, one in ipairs(made) do
    if not one.asked and not one.left_out then
      for j, other in ipairs(made) do
        if j ~= i and not other.left_out and other.batches > 0 and rawget(other.takes, one.fiche.path) then one.left_out = true end
      end
      if one.left_out then one.words = say("others") end
    end
  end
end

-- Of two files with one id the later revision is made.
local function older_revisions(made)
  for i, one in ipairs(made) do
    for j = i + 1, #made do
      local other = made[j]
      if one.fiche.id ~= "" and one.fiche.id == other.fiche.id then
        local later = (tonumber(other.fiche.root:get("revision")) or 0) > (tonumber(one.fiche.root:get("revision")) or 0)
        local old = later and one or other
        old.left_out = true
        old.words = say("same_id", { file = (later and other or one).fiche.path })
      end
    end
  end
end

-- List of {fiche, batches, words, lines, bases, left_out}; nil when something stands in the way, which was said.
function wanted_of(fiches)
  local asked = asked_of(fiches)
  if not asked then return nil end
  local made = {}
  for i, fiche in ipairs(fiches) do
    local what = rawget(asked, i)
    local batches, words = 1, say("as_written")
    if what then
      batches, words = batches_for(fiche, what)
      if not batches then
        fiche:say(nil, words, say("make_form_advice"))
        return nil
      end
    end
    local lines, bases = fiche:purchases(tamis.settings.day)
    local takes = {}
    for _, base in ipairs(bases) do takes[base.fiche.path] = true end
    made[i] = { fiche = fiche, batches = batches, words = words, lines = lines, bases = bases, takes = takes,
      asked = what ~= nil, left_out = false }
  end
  older_revisions(made)
  left_to_others(made)
  return made
end
