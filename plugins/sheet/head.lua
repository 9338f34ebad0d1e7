-- The top of the sheet: what it is, in which state, what it makes, who must not eat it unasked, what can hurt.

-- "24 portions of 115 g", short enough for a column head.
function yield_name(yield)
  local portions, each = yield:get("portions"), said_of(yield, "each")
  if portions and each[1] then return say("portions_of", { n = text(typeset(portions)), each = figures(each) }) end
  if portions then return say("portions", { n = text(typeset(portions)) }) end
  if yield:get("words") then return text(yield:get("words")) end
  if yield:get("pieces") then return say("pieces", { n = text(typeset(yield:get("pieces"))) }) end
  for _, attribute in ipairs({ "mass", "volume" }) do
    if yield:get(attribute) then return figures(said_of(yield, attribute)) end
  end
  return text(yield.id or "")
end

-- "36 cm × 26 cm × 4 cm"; in two systems "... / 14 in × 10 ¼ in × 1 ⅝ in".
local function sides_of(mould)
  local spellings = { {}, {} }
  for _, attribute in ipairs({ "length", "width", "height" }) do
    local list = said_of(mould, attribute)
    for i, words in ipairs(list) do table.insert(spellings[i], figure(words)) end
  end
  local out = {}
  for i, sides in ipairs(spellings) do out[i] = table.concat(sides, " × ") end
  return join(out, " / ")
end

local function mould_html(mould)
  local shape = "shape_" .. (mould:get("shape") or "")
  local name = mould:get("name") and text(mould:get("name")) or has_words(shape) and say(shape) or ""
  local count = mould:get("count")
  local list = { (count and text(typeset(count)) .. " × " or "") .. name }
  local function add(attribute, key)
    local html = figures(said_of(mould, attribute))
    if html ~= "" then list[#list + 1] = key and say(key, { x = html }) or html end
  end
  if mould:get("diameter") then
    add("diameter", "diameter")
    add("height", "deep")
  else
    list[#list + 1] = sides_of(mould)
  end
  add("volume")
  add("fill", "filled")
  add("holds", "holds")
  if mould:get("cut") then list[#list + 1] = say("cut", { x = text(mould:get("cut")) }) end
  for _, hole in ipairs(mould:children("gap")) do list[#list + 1] = gap(hole) end
  return join(list, ", ")
end

local function fact(heading, html) return element("div", nil, element("dt", nil, heading), element("dd", nil, html)) end

-- All that one yield says.
function yield_html(yield)
  local more, facts = {}, {}
  for _, attribute in ipairs({ "mass", "volume", "words", "pieces" }) do
    local value = yield:get(attribute)
    if value then
      local html = attribute == "words" and text(value) or attribute == "pieces" and say("pieces", { n = text(value) }) or
        figures(said_of(yield, attribute))
      if html ~= yield_name(yield) then more[#more + 1] = html end
    end
  end
  if yield:get("spare") and yield:get("spare") ~= "0" then more[#more + 1] = say("spare", { n = text(yield:get("spare")) }) end
  for _, attribute in ipairs({ "least", "most" }) do
    if yield:get(attribute) then more[#more + 1] = say(attribute, { x = figures(said_of(yield, attribute)) }) end
  end
  for _, mould in ipairs(yield:children("mould")) do facts[#facts + 1] = fact(say("mould"), mould_html(mould)) end
  for _, loss in ipairs(yield:children("loss")) do facts[#facts + 1] = fact(say("loss"), loss_html(loss)) end
  for _, hole in ipairs(yield:children("gap")) do more[#more + 1] = gap(hole) end
  return element("p", { class = "much" }, yield_name(yield)) .. (element_if("p", nil, join(more, ", ")) or "") ..
    (element_if("dl", nil, table.concat(facts)) or "")
end

local function equipment_html(fiche)
  local list, seen = {}, {}
  for _, equipment in ipairs(fiche:all("equipment")) do
    local name = equipment.label
    if not seen[name] then
      seen[name] = true
      local count, more = equipment:get("count"), {}
      if equipment:get("optional") == "yes" then more[1] = say("optional") end
      for _, hole in ipairs(equipment:children("gap")) do more[#more + 1] = gap(hole) end
      list[#list + 1] = (count and text(count) .. " × " or "") .. text(name) ..
        (more[1] and " (" .. table.concat(more, ", ") .. ")" or "")
    end
  end
  return element_if("dl", nil, list[1] and fact(say("needs"), table.concat(list, ", ")))
end

local function makes_html(fiche)
  local list = {}
  for i, yield in ipairs(fiche.root:children("yield")) do
    if i > 1 then list[#list + 1] = element("p", { class = "soft" }, say("also_makes")) end
    list[#list + 1] = yield_html(yield)
  end
  local needs = equipment_html(fiche)
  if not list[1] and not needs then return nil end
  return element("section", { class = "facts", ["aria-labelledby"] = "makes" }, element("h2", { id = "makes" }, say("makes")),
    table.concat(list), needs)
end

local function names_of(ids)
  local list = {}
  for id in (ids or ""):gmatch("%S+") do list[#list + 1] = allergen_name(id) end
  return table.concat(list, ", ")
end

local function statement_html(statement)
  local facts = {}
  for _, attribute in ipairs({ "contains", "may-contain" }) do
    local names = names_of(statement:get(attribute))
    if names ~= "" then facts[#facts + 1] = fact(say(attribute == "contains" and "contains" or "may_contain"), names) end
  end
  return (element_if("dl", nil, table.concat(facts)) or "") .. (element_if("p", nil, text(statement.own_text)) or "")
end

-- What the other files say that this one is made from, each once, and those behind them.
local function linked_statements(fiche, seen, out, depth)
  for _, element_of in ipairs(fiche:all("component", "ingredient")) do
    local linked = element_of:get("from") and element_of:linked()
    local other = linked and linked.fiche
    if other and not seen[other.id] then
      seen[other.id] = true
      local said_there = {}
      for i, statement in ipairs(other.root:children("allergens")) do said_there[i] = statement_html(statement) end
      out[#out + 1] = element("h3", nil, say("allergens_of", { title = text(other.title) })) ..
        (said_there[1] and table.concat(said_there) or element("p", nil, say("no_allergens")))
      if depth < 4 then linked_statements(other, seen, out, depth + 1) end
    end
  end
end

local function allergens_html(fiche)
  local own, others = {}, {}
  for i, statement in ipairs(fiche.root:children("allergens")) do own[i] = statement_html(statement) end
  local stated = own[1] ~= nil
  if not stated then own[1] = element("p", nil, element("b", nil, say("no_allergens"))) end
  linked_statements(fiche, { [fiche.id] = true }, others, 1)
  return element("section", { class = "allergens", ["aria-labelledby"] = "allergens" },
    element("h2", { id = "allergens" }, say("allergens")), table.concat(own), table.concat(others),
    element("p", { class = "duty" }, say(stated and "allergens_duty" or "no_allergens_duty")))
end

local function cautions_html(fiche)
  local list = {}
  for i, caution in ipairs(fiche.root:children("caution")) do list[i] = element("p", nil, prose_of(caution)) end
  return list[1] and element("section", { class = "cautions", ["aria-labelledby"] = "cautions" },
    element("h2", { id = "cautions" }, say("caution")), table.concat(list))
end

function state_of(fiche)
  local state = fiche.root:get("state") or "none"
  return has_words("state_" .. state) and state or "none"
end

-- "35/3" as "11 2/3".
local function mixed(number)
  local over, under = number:match("^%s*(%d+)%s*/%s*(%d+)%s*$")
  if not over or #over > 9 or #under > 9 then return number end
  over, under = tonumber(over), tonumber(under)
  if under == 0 or over < under then return number end
  local whole, rest = over // under, over % under
  return rest == 0 and tostring(whole) or string.format("%d %d/%d", whole, rest, under)
end

-- What must be known before anyone relies on the sheet.
local function banners(fiche)
  local list, trials = {}, fiche.root:children("trial")
  if state_of(fiche) == "draft" then list[1] = say("draft_says") end
  if not trials[1] then list[#list + 1] = say("no_trial") end
  local last = trials[#trials]
  if last and last:get("verdict") == "failed" then
    list[#list + 1] = say("trial_failed", { date = text(last:get("date") or "") })
  end
  local times = fiche.root:get("scaled-by")
  if times then list[#list + 1] = say("scaled", { times = text(typeset(mixed(times))) }) end
  for i, html in ipairs(list) do list[i] = element("p", nil, html) end
  return element_if("div", { class = "banner" }, table.concat(list))
end

-- Said once, where more than one figure stands for a thing.
local function how_to_read(fiche)
  local list = {}
  if #page.batches == 1 and not page.side_by_side then
    local names = yield_name(fiche:yields()[1]) .. " | " .. yield_name(fiche:find(page.batches[1]))
    list[1] = say("several_batches", { x = names })
  elseif #page.batches > 0 then
    list[1] = say("table_only", { n = tostring(1 + #page.batches) })
  end
  if page.side_by_side then list[#list + 1] = say("both_systems") end
  if page.converted and not page.side_by_side then list[#list + 1] = say("converted") end
  if page.refused then list[#list + 1] = say("as_written", { why = element("span", { lang = "en" }, text(page.refused)) }) end
  return element_if("p", { class = "reading" }, join(list, " "))
end

function head_html(fiche)
  local mark = { element("span", { class = "state " .. state_of(fiche) }, say("state_" .. state_of(fiche))) }
  local revision = fiche.root:get("revision")
  if revision then mark[2] = element("span", nil, say("revision", { n = text(revision) })) end
  mark[#mark + 1] = element("span", nil, text(fiche.id))
  if tamis.kitchen.name ~= "" then mark[#mark + 1] = element("span", nil, text(tamis.kitchen.name)) end
  local summary = fiche.root:child("summary")
  return element("header", { class = "head" }, element("p", { class = "mark" }, table.concat(mark, " ")),
    element("h1", nil, text(fiche.title)),
    summary and element("p", { class = "summary" }, prose_of(summary)), banners(fiche))
end

function before_html(fiche)
  local sections = { n = 3, makes_html(fiche), allergens_html(fiche), cautions_html(fiche) }
  return element("div", { class = "before" }, join(sections, "", 3)) .. (how_to_read(fiche) or "")
end

-- The run of the work: components by their day. On a screen it jumps, on paper it is the plan.
function run_html(components)
  if #components < 2 then return "" end
  local days, out = {}, {}
  for _, component in ipairs(components) do
    local day = component:get("day")
    if not days[1] or days[#days].day ~= day then days[#days + 1] = { day = day, links = {} } end
    local links = days[#days].links
    links[#links + 1] = element("li", nil, element("a", { href = "#" .. anchor(component) },
      element("span", { class = "letter" }, page.letters[component.number]), " ",
      element("span", { class = "name" }, text(component.title))))
  end
  for i, day in ipairs(days) do
    out[i] = element("li", nil, day.day and element("span", { class = "day" }, say("day", { n = text(day.day) })) .. " ",
      element("ol", nil, table.concat(day.links)))
  end
  return element("nav", { class = "run", ["aria-label"] = words_of("components") }, element("ul", nil, table.concat(out)))
end
