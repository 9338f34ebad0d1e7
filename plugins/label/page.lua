-- The label as one HTML page.

local function element(name, attributes, ...)
  local out = { "<", name }
  for attribute, value in pairs(attributes or {}) do out[#out + 1] = " " .. attribute .. '="' .. tamis.escape(value) .. '"' end
  out[#out + 1] = ">"
  for i = 1, select("#", ...) do out[#out + 1] = select(i, ...) or "" end
  out[#out + 1] = "</" .. name .. ">"
  return table.concat(out)
end

-- Dates stay in one piece.
local function text(words) return tamis.escape((words:gsub("(%d%d%d%d)%-(%d%d)%-(%d%d)", "%1\u{2011}%2\u{2011}%3"))) end

local style = [[
:root { color-scheme: light; --ink: #1b1a17; --soft: #5c574d; --hair: #d2ccbf; --paper: #fffefa; --stop: #8a1230; --good: #22543d; }
* { box-sizing: border-box; }
body { margin: 0; background: var(--paper); color: var(--ink); font: 1rem/1.5 "Avenir Next", "Segoe UI", Roboto, "Noto Sans", "Liberation Sans", "DejaVu Sans", sans-serif; font-variant-numeric: lining-nums tabular-nums; }
main { max-width: 60rem; margin: 0 auto; padding: 1.5rem 1rem 3rem; }
h1, h2, p, ul, table { margin: 0; padding: 0; }
h2 { font-size: 1rem; margin-bottom: .35rem; }
ul { padding-left: 1.2em; }
.two { display: grid; gap: 1.5rem 2rem; }
@media (min-width: 46rem) { .two { grid-template-columns: 4fr 3fr; align-items: start; } }
.label { border: 2px solid var(--ink); padding: 1rem 1.1rem; }
.label h1 { font: 700 1.6rem/1.15 "Iowan Old Style", Palatino, P052, "Noto Serif", "DejaVu Serif", serif; margin-bottom: .6rem; text-wrap: balance; }
.label p + p { margin-top: .5rem; }
.label strong { font-weight: 800; text-transform: uppercase; letter-spacing: .01em; }
table { border-collapse: collapse; width: 100%; }
th, td { text-align: left; font-weight: 400; vertical-align: baseline; padding: .22rem 0; border-top: 1px solid var(--hair); }
thead th, thead td { font-size: .875rem; color: var(--soft); border-top: 0; }
td.n, th.n { text-align: right; padding-left: 1rem; white-space: nowrap; }
.nutrition { border: 2px solid var(--ink); padding: .7rem 1.1rem; }
.nutrition th.sub { padding-left: 1.1em; }
.nutrition thead th { white-space: normal; }
section { margin-top: 1.75rem; }
.state { border-left: .4rem solid var(--stop); padding: .1rem 0 .1rem .9rem; }
.state.good { border-color: var(--good); }
.state h2 { color: var(--stop); }
.state.good h2 { color: var(--good); }
.where td, .where th { padding-right: 1rem; }
.where td:last-child { white-space: nowrap; }
.scroll { overflow-x: auto; }
.notes { font-size: .875rem; color: var(--soft); max-width: 65ch; }
.notes p + p { margin-top: .3rem; }
@media print { main { padding: 0; } html { font-size: 80%; } section, .label, .nutrition { break-inside: avoid; } }
]]

local function runs_html(runs)
  local out = {}
  for i, run in ipairs(runs) do out[i] = run.marked and element("strong", nil, text(run.text)) or text(run.text) end
  return table.concat(out)
end

local function line(key, html) return element("p", nil, element("b", nil, text(say(key) .. say("colon"))), " ", html, ".") end

local function label_html(facts)
  local list = { element("h1", nil, text(facts.title)), line("ingredients", runs_html(facts.ingredients)) }
  if facts.law == "us" and facts.contains[1] then list[#list + 1] = line("contains", text(table.concat(facts.contains, ", "))) end
  if facts.may[1] then list[#list + 1] = line("may_contain", text(table.concat(facts.may, ", "))) end
  return element("div", { class = "label" }, table.concat(list))
end

local part_of = { saturates = true, sugars = true, energy_kcal = true }

local function nutrition_html(facts)
  local first = facts.rows[1]
  if not first.hundred and not first.portion then return "" end
  local head = { element("th", nil) }
  if first.hundred then head[2] = element("th", { class = "n", scope = "col" }, text(say("per_100_g"))) end
  if first.portion then head[#head + 1] = element("th", { class = "n", scope = "col" }, text(facts.portion_head)) end
  local body = {}
  for _, row in ipairs(facts.rows) do
    local cells = { element("th", { scope = "row", class = rawget(part_of, row.key) and "sub" or "main" }, text(row.name)) }
    if row.hundred then cells[2] = element("td", { class = "n" }, text(row.hundred)) end
    if row.portion then cells[#cells + 1] = element("td", { class = "n" }, text(row.portion)) end
    body[#body + 1] = element("tr", nil, table.concat(cells))
  end
  return element("div", { class = "nutrition" }, element("h2", nil, text(say("nutrition"))),
    element("table", nil, element("thead", nil, element("tr", nil, table.concat(head))), element("tbody", nil, table.concat(body))))
end

local function where_html(facts)
  local body = {}
  for i, row in ipairs(facts.allergens) do
    body[i] = element("tr", nil, element("th", { scope = "row" }, text(row.name)), element("td", nil, text(table.concat(row.sources, "; "))),
      element("td", nil, text(row.stated)))
  end
  if not body[1] then return element("section", nil, element("h2", nil, text(say("where_from"))), element("p", nil, text(say("none")))) end
  local head = {}
  for i, key in ipairs({ "allergen", "source", "stated" }) do head[i] = element("th", { scope = "col" }, text(say(key))) end
  return element("section", { class = "where" }, element("h2", nil, text(say("where_from"))), element("div", { class = "scroll" },
    element("table", nil, element("thead", nil, element("tr", nil, table.concat(head))), element("tbody", nil, table.concat(body)))))
end

local function components_html(facts)
  local head, rows = component_rows(facts)
  if not rows[2] then return "" end
  local function cells(name, row)
    local out = {}
    for i, cell in ipairs(row) do
      out[i] = element(i == 1 and "th" or name, { class = i > 1 and "n" or "main", scope = name == "th" and "col" or i == 1 and "row" or nil }, text(cell))
    end
    return element("tr", nil, table.concat(out))
  end
  local body = {}
  for i, row in ipairs(rows) do body[i] = cells("td", row) end
  return element("section", nil, element("h2", nil, text(say("by_component"))), element("div", { class = "scroll" },
    element("table", nil, element("thead", nil, cells("th", head)), element("tbody", nil, table.concat(body)))))
end

local function state_html(facts)
  if not facts.gaps[1] then
    return element("section", { class = "state good" }, element("h2", nil, text(say("ready"))), element("p", nil, text(say("ready_says"))))
  end
  local list = {}
  for i, gap in ipairs(facts.gaps) do list[i] = element("li", nil, text(gap)) end
  return element("section", { class = "state" }, element("h2", nil, text(say("not_ready"))), element("ul", nil, table.concat(list)))
end

function page_of(facts)
  local notes = {}
  for i, note in ipairs(facts.notes) do notes[i] = element("p", nil, text(note)) end
  local body = element("main", nil, element("div", { class = "two" }, label_html(facts), nutrition_html(facts)), state_html(facts),
    where_html(facts), components_html(facts), element("section", { class = "notes" }, table.concat(notes)))
  local head = '<meta charset="utf-8"/>\n<meta name="viewport" content="width=device-width, initial-scale=1"/>\n' ..
    "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\"/>\n" ..
    element("title", nil, text(facts.title)) .. "\n<style>" .. style .. "</style>"
  return "<!DOCTYPE html>\n" .. element("html", { lang = label_language() }, element("head", nil, head), "\n", element("body", nil, body)) .. "\n"
end
