-- The list of what goes in: one table a component.

-- "5 × the weight of the gelatine"
local function by_another_line(ingredient)
  local other = ingredient:get("as-much-as")
  other = other and ingredient.fiche:find(other)
  if not other then return nil end
  local by, times = ingredient:get("by"), ingredient:get("times")
  if not (by and has_words("same_" .. by)) then by = "any" end
  local values = { x = text(other.label), n = times and figure(times) }
  return say((times and "times_" or "same_") .. by, values)
end

local function for_each(ingredient)
  local other = ingredient:get("for-each")
  other = other and ingredient.fiche:find(other)
  return other and say("for_each", { n = figures(said_of(ingredient, "each")), x = text(other.label) })
end

local function tops_up(ingredient)
  local ids = ingredient:get("tops-up")
  if not ids then return nil end
  local labels = {}
  for id in ids:gmatch("%S+") do
    local other = ingredient.fiche:find(id)
    labels[#labels + 1] = text(other and other.label or id)
  end
  local to = said_of(ingredient, "to")
  return say(to[1] and "tops_up" or "tops_up_any", { x = table.concat(labels, ", "), to = figures(to) })
end

local function pieces(ingredient)
  local list, size = said_of(ingredient, "pieces"), ingredient:get("size")
  if list[1] then
    local count = text(typeset(list[#list]))
    return size and say("sized", { n = count, size = text(size) }) or say("count_pieces", { n = count })
  end
  return size and say("size", { size = text(size) })
end

local function prepared(ingredient)
  local prep, weighed = ingredient:get("prep"), ingredient:get("weighed")
  if not prep then return weighed == "bought" and say("weighed_bought") or nil end
  if weighed == "before" or weighed == "after" then return say("weighed_" .. weighed, { prep = text(prep) }) end
  return text(prep)
end

local function packs(element)
  local count, pack, loose = element:get("packs"), element:get("pack"), element:get("loose")
  if not count then return nil end
  local html = say("packs", { n = figure(count), pack = text(pack or "") })
  return loose and html .. " + " .. figures(said_of(element, "loose")) or html
end

-- What is said of the other file that makes it: its title, or that it cannot be read.
local function from_file(element_of, name)
  if not element_of:get("from") then return nil end
  local linked, why = element_of:linked()
  if not linked then
    return say("sheet_of", { x = text(element_of:get("from")) }) .. " " ..
      element("span", { class = "gap" }, say("not_opened", { why = text(why or "") }))
  end
  local fiche = linked.fiche
  local title = text(fiche.title)
  if linked.kind == "component" and linked.title ~= fiche.title then title = title .. ", " .. text(linked.title) end
  local revision = fiche.root:get("revision")
  local where = fiche.title == name and say("own_sheet") or say("sheet_of", { x = title })
  return join({ where, revision and say("revision", { n = text(revision) }) or "", say("state_" .. state_of(fiche)) }, ", ")
end

local function swaps(ingredient, list)
  for _, swap in ipairs(ingredient:children("swap")) do
    local name = swap.own_text
    if name == "" then name = swap.food and swap.food:name(label_language()) or swap:get("food") or "" end
    local amount = figures(said_of(swap, "amount"))
    local what = text(name) .. (amount ~= "" and " " .. amount or "")
    local share = said_of(swap, "up-to")
    list[#list + 1] = share[1] and say("or_up_to", { share = figures(share), x = what }) or say("or", { x = what })
  end
end

local function percent(ingredient, attribute)
  local list = said_of(ingredient, attribute)
  return list[1] and say(attribute, { x = figures(list) })
end

-- All that is said of an ingredient beside its name and amount, as HTML, in the order a cook asks for it.
local function details(ingredient)
  local list = {}
  local function add(html)
    if html and html ~= "" then list[#list + 1] = html end
  end
  add(pieces(ingredient))
  add(prepared(ingredient))
  local purpose = ingredient:get("purpose")
  if purpose and purpose ~= "food" then add(say_value("purpose_", purpose)) end
  add(by_another_line(ingredient))
  add(for_each(ingredient))
  add(tops_up(ingredient))
  if ingredient:get("per") then add(say_value("per_", ingredient:get("per"))) end
  add(figures(said_of(ingredient, "at")))
  if ingredient:get("purchase") then add(say("purchase", { x = figures(said_of(ingredient, "purchase")) })) end
  add(packs(ingredient))
  for _, attribute in ipairs({ "fat", "cocoa", "bloom" }) do add(percent(ingredient, attribute)) end
  if ingredient:get("result") then
    local maker = ingredient.fiche:find(ingredient:get("result"))
    add(say("kept_from", { x = text(maker and maker.label or ingredient:get("result")) }))
  end
  if ingredient:get("recipe") then add(say("recipe", { x = text(ingredient:get("recipe")) })) end
  add(from_file(ingredient, ingredient.label))
  local halves = {}
  for i, part in ipairs(ingredient:children("part")) do halves[i] = text(part.label) end
  if halves[1] then add(say("gives", { x = table.concat(halves, ", ") })) end
  if ingredient:get("optional") == "yes" then add(say("optional")) end
  swaps(ingredient, list)
  for _, hole in ipairs(ingredient:children("gap")) do add(gap(hole)) end
  if page.wording ~= "short" then
    for _, note in ipairs(ingredient:children("note")) do add(prose_of(note)) end
  end
  return join(list, "; ")
end

-- One amount cell. Figures with one unit are lined up on their decimal sign; a second spelling stands below.
local function amount_cell(list)
  if not list[1] then return element("td", { class = "amount" }) end
  local whole, rest = at_the_axis(list[1])
  local first = whole and element("span", { class = "whole" }, text(whole)) .. text(rest) or text(typeset(list[1]))
  return element("td", { class = "amount" }, first,
    list[2] and " " .. element("span", { class = "second" }, text(typeset(list[2]))))
end

local function row(ingredient, prefix)
  local cells = { amount_cell(amount_of(ingredient)) }
  for _, batch in ipairs(page.batches) do
    local list = amount_of(ingredient, batch)
    cells[#cells + 1] = amount_cell(list)
  end
  local name = text(ingredient.label)
  if prefix then name = prefix .. " " .. name end
  local how = details(ingredient)
  cells[#cells + 1] = element("td", nil, name,
    how ~= "" and '<span class="comma">,</span> ' .. element("span", { class = "how" }, how))
  return element("tr", nil, table.concat(cells))
end

-- A component that another file makes: how much of it, under its name here, and what differs.
local function row_of_other(component)
  local linked = component:linked()
  local name = linked and (linked.kind == "component" and linked.title or linked.fiche.title) or component.title
  local list = { from_file(component, name) }
  for _, override in ipairs(component:children("override")) do
    local other = linked and linked.fiche:find(override:get("ingredient") or "")
    local changed = other and other.label or override:get("ingredient") or ""
    list[#list + 1] = say("override", { x = text(changed) .. " " .. figures(said(override)) })
  end
  return element("tr", nil, amount_cell(said_of(component, "take")),
    element("td", #page.batches > 0 and { colspan = 1 + #page.batches } or nil, text(name),
      '<span class="comma">,</span> ' .. element("span", { class = "how" }, join(list, "; "))))
end

local function group_row(html)
  return element("tr", { class = "group" },
    element("th", { colspan = 2 + #page.batches, scope = "rowgroup" }, html))
end

-- Bodies of the table: each a heading (or none) and its rows. Ingredients that are not of the food come last.
local function bodies(component)
  local list = { { rows = {} } }
  local apart = { heading = say("not_food"), rows = {} }
  local group
  local function body(heading)
    list[#list + 1] = { heading = heading, rows = {} }
  end
  local function add(ingredient, prefix)
    if not ingredient.counts then
      apart.rows[#apart.rows + 1] = row(ingredient, prefix)
      return
    end
    local its_group = ingredient:get("group")
    if its_group ~= group then
      group = its_group
      body(group and text(group))
    end
    local rows = list[#list].rows
    rows[#rows + 1] = row(ingredient, prefix)
  end
  local function add_all(parent)
    for _, child in ipairs(parent:children("ingredient", "choice", "variant")) do
      if child.kind == "ingredient" then
        add(child)
      elseif child.kind == "choice" then
        local first = true
        for _, ingredient in ipairs(child:children("ingredient")) do
          if first then
            group = ingredient:get("group")
            local when = child:get("when")
            body(when and say("choose_when", { when = text(when) }) or say("choose"))
          end
          local rows = list[#list].rows
          rows[#rows + 1] = row(ingredient, not first and say("or", { x = "" }))
          first = false
        end
        if not first then body(nil) end
      else
        group = nil
        body(text(child.title))
        add_all(child)
        body(nil)
      end
    end
  end
  if component:get("from") then list[1].rows[1] = row_of_other(component) end
  add_all(component)
  list[#list + 1] = apart
  return list
end

-- What a component takes from the other components of the fiche, in their order.
local function taken_over(component)
  local taken, rows = {}, {}
  for _, step in ipairs(component:children("step")) do
    for _, taking in ipairs(step:takes()) do
      local thing = taking.thing
      local source = thing.kind == "component" and thing.element or thing.kind == "result" and thing.element.component
      if source and source ~= component and not taken[source.number] then taken[source.number] = taking end
    end
  end
  for number, other in ipairs(component.fiche:components()) do
    local taking = taken[number]
    if taking then
      local take = taking.element and figures(said_of(taking.element, "take")) or ""
      rows[#rows + 1] = element("tr", nil, element("td", { class = "amount" }, page.letters[number]),
        element("td", #page.batches > 0 and { colspan = 1 + #page.batches } or nil,
          element("a", { href = "#" .. anchor(other) }, text(other.title)),
          take ~= "" and '<span class="comma">,</span> ' .. element("span", { class = "how" }, take)))
    end
  end
  return rows
end

local function heads(only_components)
  if only_components then
    return element("thead", nil, element("tr", nil, element("th", { class = "amount", scope = "col" }, say("from")),
      element("th", { scope = "col" }, say("component"))))
  end
  local columns = { say("amount") }
  if #page.batches > 0 then
    columns[1] = yield_name(page.fiche:yields()[1])
    for i, batch in ipairs(page.batches) do columns[i + 1] = yield_name(page.fiche:find(batch)) end
  end
  local out = {}
  for i, column in ipairs(columns) do out[i] = element("th", { class = "amount", scope = "col" }, column) end
  out[#out + 1] = element("th", { scope = "col" }, say("ingredient"))
  return element("thead", nil, element("tr", nil, table.concat(out)))
end

-- The table, how many rows it has, and what it is called; nil when nothing goes in.
function ingredient_table(component)
  local html, count, of_others = {}, 0, taken_over(component)
  for _, body in ipairs(bodies(component)) do
    if #body.rows > 0 then
      count = count + #body.rows
      html[#html + 1] = element("tbody", nil, body.heading and group_row(body.heading), table.concat(body.rows))
    end
  end
  local only_components = count == 0
  if #of_others > 0 then
    count = count + #of_others
    html[#html + 1] = element("tbody", nil, not only_components and group_row(say("from_components")), table.concat(of_others))
  end
  if count == 0 then return nil, 0 end
  return element("table", { class = "list" }, heads(only_components), table.concat(html)), count,
    say(only_components and "from_components" or "ingredients")
end
