-- What goes in: one line an ingredient, as {amount, name, how}: plain words all three.

-- Ids of the batches that have amounts of their own, in the order of the yields; {} when there is one only.
function further_batches(fiche)
  local named, list = {}, {}
  for _, amount in ipairs(fiche:all("amount")) do
    if amount.parent.kind == "ingredient" then named[amount:get("batch") or ""] = true end
  end
  for _, yield in ipairs(fiche:yields()) do
    if yield.id and rawget(named, yield.id) then list[#list + 1] = yield.id end
  end
  return list
end

local function amount_for(ingredient, batch)
  for _, amount in ipairs(ingredient:children("amount")) do
    local words = amount:get("batch") == batch and figure_of(amount)
    if words and words ~= "" then return words end
  end
  return "–"
end

local function amount_of(ingredient)
  local words = figure_of(ingredient)
  if words == "" then
    local mass = ingredient:get("as-much-as") and ingredient.mass
    if mass then words = (mass:rounded("metric", ingredient.food) or mass):written() end
    local packs, pack = ingredient:get("packs"), ingredient:get("pack")
    if packs and pack then words = typeset(packs) .. " × " .. pack end
  end
  local list = {}
  for i, batch in ipairs(further_batches(ingredient.fiche)) do list[i] = amount_for(ingredient, batch) end
  while list[1] and list[#list] == "–" do list[#list] = nil end
  if words == "" then return table.concat(list, ", ") end
  for i, more in ipairs(list) do list[i] = say("or", { x = more }) end
  return join({ words, table.unpack(list) }, " ", 1 + #list)
end

local function other(ingredient, attribute)
  local id = ingredient:get(attribute)
  local found = id and ingredient.fiche:find(id)
  return id and (found and found.label or id)
end

local function by_another_line(ingredient)
  local x = other(ingredient, "as-much-as")
  if not x then return nil end
  local times, mass = ingredient:get("times"), ingredient:get("by") == "mass" and "_mass" or ""
  return times and times ~= "1" and say("times" .. mass, { n = typeset(times), x = x }) or say("same" .. mass, { x = x })
end

local function tops_up(ingredient)
  local ids = ingredient:get("tops-up")
  if not ids then return nil end
  local labels = {}
  for id in ids:gmatch("%S+") do
    local found = ingredient.fiche:find(id)
    labels[#labels + 1] = found and found.label or id
  end
  local to = ingredient:get("to")
  return say(to and "tops_up" or "tops_up_any", { x = table.concat(labels, ", "), to = to and typeset(to) })
end

local function swaps(ingredient, add)
  for _, swap in ipairs(ingredient:children("swap")) do
    local name = swap.own_text
    if name == "" then name = swap.food and swap.food:name(own_language()) or swap:get("food") or "" end
    local amount, share = swap:get("amount"), swap:get("up-to")
    local what = amount and typeset(amount) .. " " .. name or name
    add(share and say("or_up_to", { share = typeset(share), x = what }) or say("or", { x = what }))
  end
end

local function how_of(ingredient)
  local list = {}
  local function add(words)
    if words and words ~= "" then list[#list + 1] = words end
  end
  local pieces, size = ingredient:get("pieces"), ingredient:get("size")
  add(pieces and say("pieces", { n = typeset(pieces) .. (size and " " .. size or "") }) or size)
  add(ingredient:get("prep"))
  local purpose = ingredient:get("purpose")
  if purpose and purpose ~= "food" then add(say("purpose_" .. purpose)) end
  add(by_another_line(ingredient))
  if ingredient:get("for-each") then
    add(say("for_each", { n = typeset(ingredient:get("each") or "1"), x = other(ingredient, "for-each") }))
  end
  add(tops_up(ingredient))
  if ingredient:get("per") then add(say("per_" .. ingredient:get("per"))) end
  add(ingredient:get("at") and typeset(ingredient:get("at")))
  for _, attribute in ipairs({ "purchase", "fat", "cocoa", "bloom" }) do
    if ingredient:get(attribute) then add(say(attribute, { x = typeset(ingredient:get(attribute)) })) end
  end
  if ingredient:get("result") then add(say("kept_from", { x = other(ingredient, "result") })) end
  if ingredient:get("recipe") then add(say("recipe", { x = ingredient:get("recipe") })) end
  add(linked_note(ingredient))
  if ingredient:get("optional") == "yes" then add(say("optional")) end
  swaps(ingredient, add)
  for _, hole in ipairs(ingredient:children("gap")) do add("[" .. say("gap", { x = hole.text }) .. "]") end
  for _, note in ipairs(ingredient:children("note")) do add((plain(runs_of(note)):gsub("%.$", ""))) end
  return table.concat(list, "; ")
end

-- That another file makes it; on the page its recipe stands below.
function linked_note(element)
  if not element:get("from") then return nil end
  return say(links_below and element:linked() and "own_recipe_below" or "own_recipe")
end

local function line_of(ingredient)
  return { amount = amount_of(ingredient), name = ingredient.label, how = how_of(ingredient) }
end

-- One of several: {heading, choices}.
local function choice_of(choice)
  local when, choices = choice:get("when"), {}
  for i, ingredient in ipairs(choice:children("ingredient")) do choices[i] = line_of(ingredient) end
  return { heading = when and say("choose_when", { x = when }) or say("choose"), choices = choices }
end

-- A line as plain words; those of a choice with "or" between them.
function line_words(line)
  if not rawget(line, "choices") then
    local words = join({ line.amount, line.name }, " ")
    return line.how ~= "" and words .. ", " .. line.how or words
  end
  local out = {}
  for i, one in ipairs(line.choices) do out[i] = i == 1 and line_words(one) or say("or", { x = line_words(one) }) end
  return table.concat(out, ", ")
end

-- A component that another file makes is one line of the list: how much of it, and what differs.
local function line_of_other(component)
  local linked = component:linked()
  local list = { linked_note(component) }
  for _, override in ipairs(component:children("override")) do
    local ingredient = linked and linked.fiche:find(override:get("ingredient") or "")
    list[#list + 1] = say("override", { x = join({ figure_of(override), ingredient and ingredient.label or override:get("ingredient") }, " ", 2) })
  end
  local take = component:get("take")
  return { amount = take and typeset(take) or "", name = component.title, how = table.concat(list, "; ") }
end

-- Groups of lines, {heading?, lines}; what stands under no heading comes first, so that none takes it for its own.
function groups_of(component)
  local list, named = { { lines = {} } }, {}
  local function into(heading)
    if not heading then return list[1].lines end
    if not rawget(named, heading) then
      list[#list + 1] = { heading = heading, lines = {} }
      named[heading] = list[#list]
    end
    return named[heading].lines
  end
  local function add_all(parent, title)
    for _, child in ipairs(parent:children("ingredient", "choice", "variant")) do
      if child.kind == "variant" then
        add_all(child, child.title)
      else
        local first = child.kind == "ingredient" and child or child:child("ingredient")
        local lines = first and into(title or first:get("group"))
        if lines then lines[#lines + 1] = child == first and line_of(child) or choice_of(child) end
      end
    end
  end
  if component:get("from") then list[1].lines[1] = line_of_other(component) end
  add_all(component)
  if not list[1].lines[1] then table.remove(list, 1) end
  return list
end
