-- The foot of the sheet: trials, what changed, notes, where it comes from.

local function trial_html(trial)
  local facts = { n = 3 }
  for i, attribute in ipairs({ "batch", "oven", "by" }) do facts[i] = trial:get(attribute) and text(trial:get(attribute)) end
  local verdict = trial:get("verdict")
  local lines = { element("p", nil, element("b", nil, text(trial:get("date") or "")), " ",
    verdict and say_value("verdict_", verdict), " ", soft("· " .. join(facts, ", ", 3))) }
  for _, measured in ipairs(trial:children("measured")) do
    lines[#lines + 1] = element("p", nil, text(measured:get("what") or ""), colon(), " ", figure(measured.own_text) or "")
  end
  for _, note in ipairs(trial:children("note")) do lines[#lines + 1] = element("p", nil, prose_of(note)) end
  return element("li", nil, table.concat(lines))
end

local function section(id, heading, html)
  if not html or html == "" then return nil end
  return element("section", { class = "foot", ["aria-labelledby"] = id }, element("h2", { id = id }, heading),
    element("div", nil, html))
end

local function trials_html(fiche)
  local list = {}
  for i, trial in ipairs(fiche.root:children("trial")) do list[i] = trial_html(trial) end
  return section("trials", say("trials"), element_if("ul", nil, table.concat(list)))
end

-- Only what the revision at hand brought.
local function changes_html(fiche)
  local revision, list = fiche.root:get("revision"), {}
  for _, change in ipairs(fiche.root:children("change")) do
    if change:get("revision") == revision then list[#list + 1] = element("p", nil, prose_of(change)) end
  end
  return list[1] and section("changes", say("changed", { n = text(revision) }), table.concat(list))
end

-- What a conversion could not keep, in Tamis's own words.
local function conversion_html()
  local list = {}
  for i, message in ipairs(page.told or {}) do list[i] = element("p", { lang = "en" }, text(message)) end
  return section("conversion", say("conversion"), table.concat(list))
end

local function notes_html(fiche)
  if page.wording == "short" then return nil end
  local list = {}
  for _, note in ipairs(fiche.root:children("note", "photo")) do
    list[#list + 1] = note.kind == "photo" and photo_html(note) or element("p", nil, prose_of(note))
  end
  return section("notes", say("notes"), table.concat(list))
end

local function gaps_html(fiche)
  local list = {}
  for i, hole in ipairs(fiche.root:children("gap")) do list[i] = element("p", nil, text(hole.text)) end
  return section("gaps", say("gaps"), table.concat(list))
end

local function origins(fiche)
  local list = {}
  for _, person in ipairs(fiche.root:children("author")) do
    local role = person:get("role")
    list[#list + 1] = element("span", nil, say("author"), colon(), " ", text(person.own_text), role and " (" .. text(role) .. ")")
  end
  for _, source in ipairs(fiche.root:children("source")) do
    local parts = { n = 3, text(source.own_text) }
    for i, attribute in ipairs({ "where", "date" }) do
      parts[1 + i] = source:get(attribute) and text(source:get(attribute))
    end
    list[#list + 1] = element("span", nil, say("source"), colon(), " ", join(parts, ", ", 3))
  end
  return element_if("footer", { class = "colophon" }, join(list, " "))
end

local function flow_section(fiche)
  local html = flow_html(fiche)
  return html and element("section", { class = tamis.settings.flow == "screen" and "foot on-screen" or "foot", ["aria-labelledby"] = "flow" },
    element("h2", { id = "flow" }, say("flow")), html)
end

function tail_html(fiche)
  local sections = { n = 6, trials_html(fiche), changes_html(fiche), gaps_html(fiche), conversion_html(), notes_html(fiche), flow_section(fiche) }
  return (element_if("div", { class = "after-work" }, join(sections, "", 6)) or "")
end

function colophon_html(fiche) return origins(fiche) or "" end
