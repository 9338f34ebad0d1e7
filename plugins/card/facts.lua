-- A fiche as what the card and the page print, in plain words and runs; no markup.

function yield_name(yield)
  local portions, each, pieces = yield:get("portions"), yield:get("each"), yield:get("pieces")
  if portions then return say(each and "portions_of" or "portions", { n = typeset(portions), x = each and typeset(each) }) end
  if yield:get("words") then return yield:get("words") end
  if pieces then return say(each and "pieces_of" or "pieces", { n = typeset(pieces), x = each and typeset(each) }) end
  for _, attribute in ipairs({ "mass", "volume" }) do
    if yield:get(attribute) then return typeset(yield:get(attribute)) end
  end
  return yield.id or ""
end

local function sizes(mould, attributes)
  local list = {}
  for _, attribute in ipairs(attributes) do list[#list + 1] = mould:get(attribute) and typeset(mould:get(attribute)) end
  return table.concat(list, " × ")
end

local function mould_name(mould)
  local count = mould:get("count")
  local shape = "shape_" .. (mould:get("shape") or "")
  local name = mould:get("name") or has_words(shape) and say(shape) or ""
  local round = mould:get("diameter") and "⌀\u{a0}" or ""
  return join({ (count and count ~= "1" and typeset(count) .. " × " or "") .. name,
    round .. sizes(mould, { "diameter", "length", "width", "height" }), mould:get("volume") and typeset(mould:get("volume")) }, ", ", 3)
end

local function letters_for(components)
  local list = {}
  if #components < 2 then return list end
  for i, component in ipairs(components) do
    list[component.number] = i <= 26 and string.char(64 + i) or string.char(64 + (i - 1) // 26, 65 + (i - 1) % 26)
  end
  return list
end

local function names_of(ids)
  local list = {}
  for id in (ids or ""):gmatch("%S+") do list[#list + 1] = allergen_name(id) end
  return table.concat(list, ", ")
end

-- What the author states, what other files state of theirs, and what the ingredients bring beyond it. Never that there are none.
local function allergens_of(fiche)
  local list = {}
  for _, statement in ipairs(fiche.root:children("allergens")) do
    local words = statement.own_text
    if words == "" then
      local contains, may = names_of(statement:get("contains")), names_of(statement:get("may-contain"))
      words = join({ contains ~= "" and say("contains", { x = contains }), may ~= "" and say("may_contain", { x = may }) }, "; ", 2)
    end
    if words ~= "" then list[#list + 1] = words end
  end
  local stated = list[1] ~= nil
  if not stated then list[1] = say("no_allergens") end
  local more = {}
  for _, allergen in ipairs((fiche:allergens())) do
    local firm = allergen.level == "contains" or allergen.level == "assumed" or allergen.level == "option"
    if firm and allergen.stated == "no" then more[#more + 1] = allergen_name(allergen.id) end
  end
  if more[1] then list[#list + 1] = say("more_allergens", { x = table.concat(more, ", ") }) end
  return { words = table.concat(list, " "), stated = stated }
end

local function keep_of(keep)
  local of = keep:get("of")
  local thing = of and keep.fiche:find(of)
  local facts = { keep:get("where"), keep:get("at") and typeset(keep:get("at")), keep:get("for") and typeset(keep:get("for")) }
  local head = join(facts, ", ", 3)
  local runs = runs_of(keep)
  for _, attribute in ipairs({ "thaw", "reheat" }) do
    if keep:get(attribute) then runs[#runs + 1] = { text = " " .. capital(say(attribute, { x = keep:get(attribute) })) .. "." } end
  end
  return { heading = of and say("keep_of", { x = thing and thing.label or of }) or say("keep"), lead = head ~= "" and head .. "." or "", runs = runs }
end

local function remarks_of(parent, manner)
  local list = {}
  for _, block in ipairs(parent:children("caution", "gap", "note")) do
    if block.kind == "gap" then
      list[#list + 1] = { kind = "gap", runs = { { text = "[" .. say("gap", { x = block.text }) .. "]", kind = "gap" } } }
    elseif block.kind == "caution" or manner == "page" then
      list[#list + 1] = { kind = block.kind, heading = say(block.kind), runs = runs_of(block) }
    end
  end
  return list
end

function component_of(component, letters, manner)
  local one = { title = component.title, letter = rawget(letters, component.number), day = component:get("day"), groups = groups_of(component),
    optional = component:get("optional") == "yes", steps = {}, keeping = {}, remarks = remarks_of(component, manner), element = component }
  local yield = component:child("yield")
  one.makes = yield and yield_name(yield)
  for i, step in ipairs(component:children("step")) do one.steps[i] = step_of(step, letters, manner) end
  for i, keep in ipairs(component:children("keep")) do one.keeping[i] = keep_of(keep) end
  return one
end

-- manner: "full" or "short" for the card, "page" for the web.
function facts_of(fiche, manner)
  local components = fiche:components()
  local facts = { fiche = fiche, title = fiche.title, draft = fiche.root:get("state") == "draft", makes = {}, moulds = {}, equipment = {}, cautions = {},
    components = {}, keeping = {}, allergens = allergens_of(fiche), letters = letters_for(components) }
  local summary = fiche.root:child("summary")
  facts.summary = summary and runs_of(summary)
  for i, yield in ipairs(fiche:yields()) do
    if yield.parent.kind == "fiche" then
      facts.makes[#facts.makes + 1] = yield_name(yield)
      for _, mould in ipairs(yield:children("mould")) do facts.moulds[#facts.moulds + 1] = mould_name(mould) end
    end
  end
  local seen = {}
  for _, equipment in ipairs(fiche:all("equipment")) do
    if not rawget(seen, equipment.label) then
      seen[equipment.label] = true
      facts.equipment[#facts.equipment + 1] = equipment.label
    end
  end
  for i, caution in ipairs(fiche.root:children("caution")) do facts.cautions[i] = runs_of(caution) end
  for i, component in ipairs(components) do facts.components[i] = component_of(component, facts.letters, manner) end
  for i, keep in ipairs(fiche.root:children("keep")) do facts.keeping[i] = keep_of(keep) end
  return facts
end

-- A picture that a reader of the page can reach: beside it, on the web, or in the fiche itself.
local function image_of(fiche)
  for _, photo in ipairs(fiche.root:children("photo")) do
    local href = photo:get("href") or ""
    local inside = href:find("^data:image/[jpgwn][%w]+;base64,[%w+/=%s]+$")
    if inside or href:find("^https?://") or not href:find(":", 1, true) and not href:find("^//") then
      return { href = href, alt = photo:get("alt") or photo.own_text, caption = photo.own_text }
    end
  end
end

-- Who wrote it and when it was changed, for those who find it on the web.
function with_origin(facts)
  local root = facts.fiche.root
  facts.authors = {}
  for _, author in ipairs(root:children("author")) do
    local role = author:get("role")
    if not role or role == "recipe" then facts.authors[#facts.authors + 1] = author.own_text end
  end
  for _, change in ipairs(root:children("change")) do
    local date = change:get("date")
    if date and (not rawget(facts, "modified") or date > facts.modified) then facts.modified = date end
  end
  local yield = facts.fiche:yields()[1]
  facts.portions = yield and yield:get("portions")
  facts.image = image_of(facts.fiche)
  return facts
end
