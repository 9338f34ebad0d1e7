-- A component: its heading, what goes in, how it is made, how it keeps.

function anchor(component) return "component-" .. component.number end

-- "C3" where there are several components, else "3".
function step_name(step)
  local letter = step.component and page.letters[step.component.number] or ""
  return letter .. (step.number or "")
end

-- A, B, ... Z, AA, AB, ...
function letters_for(components)
  local list = {}
  if #components < 2 then return list end
  for i = 1, #components do
    local letter, n = "", i
    while n > 0 do
      letter = string.char(65 + (n - 1) % 26) .. letter
      n = (n - 1) // 26
    end
    list[components[i].number] = letter
  end
  return list
end

-- All hands-on time, where every step states it.
local function hands_on(component)
  local sum
  for _, step in ipairs(component:children("step")) do
    local time = step:value("hands")
    if step:get("hands") and (not time or time.form ~= "exact") then return nil end
    if time then sum = sum and sum + time or time end
    if not time and not step:get("unattended") then return nil end
  end
  return sum
end

local function when(component)
  local list = {}
  if component:get("optional") == "yes" then list[1] = say("optional") end
  if component:get("day") then list[#list + 1] = say("day", { n = text(component:get("day")) }) end
  local hands = hands_on(component)
  if hands then list[#list + 1] = say("hands", { x = figure(hands:written(page.fiche.language)) }) end
  return join(list, " · ")
end

local function keep_html(keep)
  local facts = {}
  local function add(html)
    if html and html ~= "" then facts[#facts + 1] = html end
  end
  add(text(keep:get("where") or ""))
  add(figures(said_of(keep, "at")))
  add(figure(keep:get("for")))
  local of = keep:get("of")
  local thing = of and keep.fiche:find(of)
  local heading = of and say("keep_of", { x = text(thing and thing.label or of) }) or say("keep")
  local words = join(facts, ", ")
  local lines = { element("p", nil, words ~= "" and element("b", { class = "place" }, words .. "."), " ", prose_of(keep)) }
  for _, attribute in ipairs({ "thaw", "reheat" }) do
    if keep:get(attribute) then lines[#lines + 1] = titled(say(attribute) .. colon(), text(keep:get(attribute))) end
  end
  return element("section", { class = "keep" }, element("h3", nil, heading), table.concat(lines))
end

-- What a component says that is neither list nor step.
local function remarks(component)
  local list = {}
  for _, block in ipairs(component:children("caution", "gap", "note", "photo")) do
    if block.kind == "caution" then
      list[#list + 1] = element("p", { class = "caution" }, element("b", nil, say("caution"), colon()), " ", prose_of(block))
    elseif block.kind == "gap" then
      list[#list + 1] = element("p", nil, gap(block))
    elseif page.wording ~= "short" then
      list[#list + 1] = block.kind == "photo" and photo_html(block) or titled(say("note") .. colon(), prose_of(block))
    end
  end
  return table.concat(list)
end

local function method(component)
  local steps, keeping = {}, {}
  for _, step in ipairs(component:children("step")) do steps[#steps + 1] = step_html(step) end
  for _, keep in ipairs(component:children("keep")) do keeping[#keeping + 1] = keep_html(keep) end
  return element("div", { class = "method" }, element_if("ol", { class = "steps" }, table.concat(steps)), element_if("div", { class = "remarks" }, remarks(component)),
    table.concat(keeping), curve_html(component))
end

local most_rows_that_stay = 11  -- a list this long stays in view on a tablet while the steps scroll
local most_lines_together = 26  -- on paper a component this long is not divided, so a page may end that much early

-- About how many lines it takes on paper.
local function lines(component, rows)
  local sum = 3
  for _, step in ipairs(component:children("step")) do
    sum = sum + 1.5 + #step.text // 62 + 2 * #step:children("gate") + 7 * #step:children("control")
  end
  return math.max(sum + 3 * #component:children("keep"), 3 + 1.5 * rows)
end

function component_html(component)
  local letter = page.letters[component.number]
  local list, rows, called = ingredient_table(component)
  local name = "title-" .. component.number
  local heading = element("h2", { id = name },
    letter and element("span", { class = "letter" }, letter) .. " " or nil, text(component.title))
  local makes = {}
  for i, yield in ipairs(component:children("yield")) do makes[i] = yield_html(yield) end
  return element("section", { class = "component" .. (letter and lines(component, rows) <= most_lines_together and " together" or ""), id = anchor(component), ["aria-labelledby"] = name },
    element("header", nil, heading, element_if("p", { class = "when" }, when(component))),
    makes[1] and element("div", { class = "its-yield" }, soft(say("makes")), " ", table.concat(makes)),
    element("div", { class = "work" .. (page.wide_lists and " across" or list and " side" or letter and " side bare" or "") ..
      (page.side_by_side and " two" or "") },
      list and element("details", { open = true, class = rows <= most_rows_that_stay and "stays" or nil },
        element("summary", nil, called), list),
      method(component)))
end
