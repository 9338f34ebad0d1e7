-- The recipe as one page for the web.

local function text(words) return tamis.escape(words) end

local function element(name, attributes, ...)
  local out = { "<", name }
  for attribute, value in pairs(attributes or {}) do
    if value then out[#out + 1] = " " .. attribute .. '="' .. text(value) .. '"' end
  end
  out[#out + 1] = ">"
  for i = 1, select("#", ...) do out[#out + 1] = select(i, ...) or "" end
  out[#out + 1] = "</" .. name .. ">"
  return table.concat(out)
end

local function element_if(name, attributes, content)
  return content and content ~= "" and element(name, attributes, content) or ""
end

-- Words of ours; in another language than the author's they say so.
local function own(key, values)
  local language, foreign = own_language()
  local html = text(say(key, values))
  return foreign and element("span", { lang = language }, html) or html
end

local elements = { temperature = "b", cue = "em", gap = "mark" }

local function runs_html(runs)
  local out = {}
  for i, run in ipairs(runs) do
    local kind = rawget(run, "kind")
    out[i] = kind and element(elements[kind], nil, text(run.text)) or text(run.text)
  end
  return tamis.trim(table.concat(out))
end

local function block_html(block)
  local heading = rawget(block, "heading")
  return element("p", { class = block.kind }, heading and element("strong", nil, text(heading .. say("colon"))) .. " " or "", runs_html(block.runs))
end

local function step_html(step)
  local out = {}
  for _, gate in ipairs(step.before) do out[#out + 1] = block_html(gate) end
  local lead = step.lead ~= "" and element("strong", nil, text(step.lead)) .. " " or ""
  local tail = step.tail ~= "" and " " .. element("span", { class = "soft" }, "(", text(step.tail), ")") or ""
  out[#out + 1] = element("p", nil, lead, runs_html(step.runs), tail)
  for _, block in ipairs(step.after) do out[#out + 1] = block_html(block) end
  return element("li", nil, table.concat(out))
end

local function line_html(line)
  if rawget(line, "choices") then
    local list = {}
    for i, choice in ipairs(line.choices) do list[i] = line_html(choice) end
    return element("li", nil, text(line.heading .. say("colon")), element("ul", nil, table.concat(list)))
  end
  local amount = line.amount ~= "" and element("b", nil, text(line.amount)) .. " " or ""
  local how = line.how ~= "" and element("span", { class = "soft" }, ", ", text(line.how)) or ""
  return element("li", nil, amount, text(line.name), how)
end

local function lists_html(component)
  local out = {}
  for _, group in ipairs(component.groups) do
    local lines = {}
    for i, line in ipairs(group.lines) do lines[i] = line_html(line) end
    local heading = rawget(group, "heading")
    out[#out + 1] = element_if("p", { class = "group" }, heading and text(heading)) .. element("ul", { class = "list" }, table.concat(lines, "\n"))
  end
  return table.concat(out)
end

local function keep_html(keep)
  return element("p", { class = "keep" }, element("strong", nil, text(keep.heading .. say("colon"))), " ", text(keep.lead), " ", runs_html(keep.runs))
end

-- What goes in beside how it is made; `level` is that of their headings.
local function work_html(component, level)
  local lists, steps, rest = lists_html(component), {}, {}
  for i, step in ipairs(component.steps) do steps[i] = step_html(step) end
  for _, remark in ipairs(component.remarks) do rest[#rest + 1] = block_html(remark) end
  for _, keep in ipairs(component.keeping) do rest[#rest + 1] = keep_html(keep) end
  local alone = not component.steps[1] and #component.groups == 1 and #component.groups[1].lines == 1
  local left = lists ~= "" and element("div", nil, alone and "" or element("h" .. level, nil, own("ingredients")), lists) or ""
  local method = element_if("ol", { class = "steps" }, table.concat(steps, "\n"))
  if method ~= "" then method = element("h" .. level, nil, own("method")) .. method end
  local right = element_if("div", { class = "method" }, method .. table.concat(rest))
  return element("div", { class = left ~= "" and right ~= "" and "work both" or "work" }, left, right)
end

local function component_html(component, several)
  if not several then return element("section", nil, work_html(component, 2)) end
  local more = join({ component.day and own("day", { n = component.day }), component.optional and own("optional") }, " · ", 2)
  return element("section", nil, element("h2", nil, text(join({ rawget(component, "letter"), component.title }, "\u{a0}\u{a0}", 2)), more ~= "" and " " .. element("small", nil, more) or ""),
    work_html(component, 3))
end

local function part_html(part)
  local makes = part.makes and (part.take and own("recipe_for", { x = part.makes, take = part.take }) or own("recipe_makes", { x = part.makes }))
  local first = {}
  for _, caution in ipairs(part.fiche.root:children("caution")) do first[#first + 1] = block_html({ kind = "caution", heading = say("caution"), runs = runs_of(caution) }) end
  for _, statement in ipairs(part.fiche.root:children("allergens")) do
    if statement.own_text ~= "" then first[#first + 1] = element("p", nil, element("strong", nil, text(say("allergens") .. say("colon"))), " ", text(statement.own_text)) end
  end
  return element("section", { id = part.id }, element("h2", nil, text(part.component.title)), element_if("p", { class = "soft" }, makes),
    table.concat(first), work_html(part.component, 3))
end

local function fact(key, html) return html and html ~= "" and element("div", nil, element("dt", nil, own(key)), element("dd", nil, html)) or "" end

local function facts_html(facts)
  local makes = {}
  for i, words in ipairs(facts.makes) do makes[i] = i == 1 and text(words) or own("or", { x = words }) end
  local needs = {}
  for _, list in ipairs({ facts.moulds, facts.equipment }) do
    for _, words in ipairs(list) do needs[#needs + 1] = text(words) end
  end
  local times = facts.times
  local function time(name) return times[name] and text(times[name]:written()) end
  return element_if("dl", { class = "facts" }, fact("makes", table.concat(makes, ", ")) .. fact("hands", time("prepTime")) .. fact("cooking", time("cookTime")) ..
    fact("total", time("totalTime")) .. fact("needs", table.concat(needs, "; ")))
end

local function first_html(facts)
  local cautions = {}
  for i, runs in ipairs(facts.cautions) do cautions[i] = element("p", nil, runs_html(runs)) end
  local caution = cautions[1] and element("section", { class = "stop" }, element("h2", nil, own("caution")), table.concat(cautions)) or ""
  local duty = facts.allergens.stated and " " .. element("span", { class = "soft" }, own("duty")) or ""
  return element("div", { class = "first" }, element("section", { class = "allergens" }, element("h2", nil, own("allergens")),
    element("p", nil, text(facts.allergens.words), duty)), caution)
end

local names = { energy_kj = "energy", energy_kcal = "energy", fat = "fat_row" }

local function nutrition_html(facts)
  local nutrition = facts.nutrition
  if not nutrition then return "" end
  local rows, energy = {}, {}
  for _, row in ipairs(nutrition.rows) do
    if row.name == "energy_kj" or row.name == "energy_kcal" then
      energy[#energy + 1] = text(row.words)
      if #energy == 2 then rows[#rows + 1] = element("tr", nil, element("th", { scope = "row" }, own("energy")), element("td", nil, table.concat(energy, " / "))) end
    else
      rows[#rows + 1] = element("tr", nil, element("th", { scope = "row" }, own(rawget(names, row.name) or row.name)), element("td", nil, text(row.words)))
    end
  end
  return element("section", { class = "nutrition" }, element("h2", nil, own("nutrition"), " ", element("small", nil, text(nutrition.serving))),
    element("table", nil, element("tbody", nil, table.concat(rows))), element("p", { class = "soft" }, own("nutrition_says"),
      nutrition.not_weighed[1] and " " .. own("not_counted", { x = table.concat(nutrition.not_weighed, ", ") }) or ""))
end

local function image_html(facts)
  local image = facts.image
  if not image then return "" end
  return element("figure", nil, '<img src="' .. text(image.href) .. '" alt="' .. text(image.alt) .. '">', element_if("figcaption", nil, text(image.caption)))
end

function page_of(facts)
  local parts, components = {}, {}
  for i, component in ipairs(facts.components) do components[i] = component_html(component, #facts.components > 1) end
  for i, part in ipairs(facts.parts) do parts[i] = part_html(part) end
  local keeping = {}
  for i, keep in ipairs(facts.keeping) do keeping[i] = keep_html(keep) end
  local by = facts.authors[1] and table.concat(facts.authors, ", ") or tamis.kitchen.name
  local head = element("head", nil, '<meta charset="utf-8">\n<meta name="viewport" content="width=device-width, initial-scale=1">\n',
    "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'; img-src 'self' https: data:\">\n",
    element("title", nil, text(facts.title)), "\n", facts.summary and '<meta name="description" content="' .. text(plain(facts.summary)) .. '">\n' or "",
    '<script type="application/ld+json">\n', ldjson_of(facts), "\n</script>\n<style>", page_style, "</style>")
  local top = element("header", nil, facts.draft and element("p", { class = "draft" }, own("draft")) or "", element("h1", nil, text(facts.title)),
    facts.summary and element("p", { class = "summary" }, runs_html(facts.summary)) or "", by ~= "" and element("p", { class = "by" }, own("author", { x = by })) or "",
    image_html(facts), facts_html(facts))
  local below = parts[1] and element("div", { class = "parts" }, element("p", { class = "below" }, own("below")), table.concat(parts, "\n")) or ""
  local article = element("article", nil, top, first_html(facts), table.concat(components, "\n"), element_if("section", nil, table.concat(keeping)), below,
    nutrition_html(facts), element("p", { class = "rules" }, own("local_rules")))
  return "<!DOCTYPE html>\n" .. element("html", { lang = facts.fiche.language ~= "" and facts.fiche.language or (own_language()) }, head, "\n",
    element("body", nil, element("main", nil, article))) .. "\n"
end
