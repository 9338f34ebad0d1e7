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

-- On paper the label alone, in letters whose x is at least 1.2 mm high, or 0.9 mm where the largest side of the pack is under
-- 80 cm² (Article 13(2) and (3), Annex IV); capitals and figures of at least 1/16 inch in the US (21 CFR 101.2(c)). A letter x
-- is 0.468 of its size or more in the faces named here (the least from memory; Liberation Sans and DejaVu Sans measured:
-- 0.52, 0.55): 2.7 mm and 2.1 mm.
local letters = { usual = "2.7mm", small = "2.1mm" }

local style = [[
:root { color-scheme: light; --ink: #1b1a17; --soft: #5c574d; --hair: #d2ccbf; --paper: #fffefa; --stop: #8a1230; --good: #22543d; }
* { box-sizing: border-box; }
body { margin: 0; background: var(--paper); color: var(--ink); font: 1rem/1.5 "Avenir Next", "Segoe UI", Roboto, "Noto Sans", "Liberation Sans", "DejaVu Sans", sans-serif; font-variant-numeric: lining-nums tabular-nums; }
main { max-width: 60rem; margin: 0 auto; padding: 1.5rem 1rem 3rem; }
h1, h2, p, ul, table { margin: 0; padding: 0; }
h2 { font-size: 1rem; margin-bottom: .35rem; }
ul { padding-left: 1.2em; }
.label { border: 2px solid var(--ink); padding: 1rem 1.1rem; position: relative; }
@media screen and (min-width: 46rem) { .label.two { display: grid; gap: 0 2rem; grid-template-columns: 4fr 3fr; align-items: start; } }
.label h1 { font: 700 1.6rem/1.15 "Iowan Old Style", Palatino, P052, "Noto Serif", "DejaVu Serif", serif; margin-bottom: .35rem; text-wrap: balance; }
.label p + p { margin-top: .5rem; }
.label p.quantity { font-weight: 700; line-height: 1.2; margin-bottom: .6rem; }
.label strong { font-weight: 800; text-transform: uppercase; letter-spacing: .01em; }
table { border-collapse: collapse; width: 100%; }
th, td { text-align: left; font-weight: 400; vertical-align: baseline; padding: .22rem 0; border-top: 1px solid var(--hair); }
thead th, thead td { font-size: .875rem; color: var(--soft); border-top: 0; }
td.n, th.n { text-align: right; padding-left: 1rem; white-space: nowrap; }
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
.stamp { background: #fff; color: var(--stop); border: 3px double; padding: .3rem .6rem; font-weight: 700; margin: 0 0 .6rem; }
.label .stamp + .stamp, .label > .stamp:last-child { margin: .6rem 0 0; }
.all-over { position: absolute; inset: 0; overflow: hidden; pointer-events: none; }
.all-over span { position: absolute; left: -5%; width: 120%; white-space: nowrap; transform: rotate(-14deg); font: 700 1.5rem/1 sans-serif; color: #8a123038; letter-spacing: .05em; }
.all-over span::before { content: attr(data-words); }
@media print {
  @page { margin: 12mm; }
  main { padding: 0; }
  .label { width: 95mm; border-width: .3mm; padding: 3mm; font-size: var(--letters); line-height: 1.3; }
  .label h1 { font-size: 1.6em; margin-bottom: 1mm; }
  .label h2, .label thead th, .label thead td { font-size: 1em; color: inherit; }
  .label p + p, .nutrition { margin-top: 1mm; }
  .label th, .label td { padding: .2mm 0; }
  .label, .nutrition, tr { break-inside: avoid; }
  .real .work { display: none; }
  .all-over span { color: #00000038; -webkit-print-color-adjust: exact; print-color-adjust: exact; }
}
]]

local function runs_html(runs)
  local out = {}
  for i, run in ipairs(runs) do out[i] = run.marked and element("strong", nil, text(run.text)) or text(run.text) end
  return table.concat(out)
end

local function line(key, html) return element("p", nil, element("b", nil, text(say(key) .. say("colon"))), " ", html, html:match("%.$") and "" or ".") end

local function says_html(facts)
  local list = {}
  for i, said in ipairs(facts.says) do list[i] = line(said[1], text(said[2])) end
  return table.concat(list)
end

-- Figures of the net quantity as high as the law asks: a figure is 0.68 of its size or more in those faces (measured
-- in Liberation Sans: 0.69).
local function quantity_html(quantity)
  if not quantity then return nil end
  local size = string.format("%.1fmm", math.ceil(quantity.height / 0.068) / 10)
  return element("p", { class = "quantity", style = "font-size:max(" .. size .. ",1.1em)" }, text(quantity.words))
end

local function list_html(facts)
  if facts.loose then return "" end
  local list = { line("ingredients", runs_html(facts.ingredients)) }
  if facts.law == "us" and facts.contains[1] then list[#list + 1] = line("contains", text(table.concat(facts.contains, ", "))) end
  if facts.may[1] then list[#list + 1] = line("may_contain", text(table.concat(facts.may, ", "))) end
  return table.concat(list)
end

local part_of = { saturates = true, sugars = true, energy_kcal = true }

local function nutrition_html(facts)
  local first = facts.rows[1]
  if not first or tamis.settings.nutrition ~= "printed" or not first.hundred and not first.portion then return "" end
  local head = { element("td", nil) }
  if first.hundred then head[2] = element("th", { class = "n", scope = "col" }, text(say("per_100_g"))) end
  if first.portion then head[#head + 1] = element("th", { class = "n", scope = "col" }, text(facts.portion_head)) end
  local body = {}
  for _, row in ipairs(facts.rows) do
    local cells = { row.name == "" and element("td", nil) or
      element("th", { scope = "row", class = rawget(part_of, row.key) and "sub" or "main" }, text(row.name)) }
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
  if not body[1] then return element("section", { class = "work" }, element("h2", nil, text(say("where_from"))), element("p", nil, text(say("none")))) end
  local head = {}
  for i, key in ipairs({ "allergen", "source", "stated" }) do head[i] = element("th", { scope = "col" }, text(say(key))) end
  return element("section", { class = "where work" }, element("h2", nil, text(say("where_from"))), element("div", { class = "scroll" },
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
  return element("section", { class = "work" }, element("h2", nil, text(say("by_component"))), element("div", { class = "scroll" },
    element("table", nil, element("thead", nil, cells("th", head)), element("tbody", nil, table.concat(body)))))
end

local function state_html(facts)
  if not facts.gaps[1] then
    return element("section", { class = "state good work" }, element("h2", nil, text(say("ready"))), element("p", nil, text(say("ready_says"))))
  end
  local list = {}
  for i, sentence in ipairs(gap_sentences(facts)) do list[i] = element("li", nil, text(sentence)) end
  return element("section", { class = "state work" }, element("h2", nil, text(say("not_ready"))), element("ul", nil, table.concat(list)))
end

-- Over all of it, that nobody cuts it out and sticks it on.
local function all_over()
  local words, rows = string.rep(say("stamp") .. " · ", 6), {}
  for i = 0, 9 do rows[i + 1] = element("span", { style = "top:" .. (i * 11) .. "%", ["data-words"] = words }) end
  return element("div", { class = "all-over", ["aria-hidden"] = "true" }, table.concat(rows))
end

local function label_html(facts)
  local stamp = facts.trial and element("p", { class = "stamp" }, text(say("stamp"))) or ""
  local nutrition = nutrition_html(facts)
  local says = element("div", nil, stamp, element("h1", nil, text(facts.title)), quantity_html(facts.quantity), list_html(facts),
    says_html(facts))
  return element("article", { class = nutrition ~= "" and "label two" or "label",
    style = "--letters:" .. (tamis.settings.small and letters.small or letters.usual) }, says, nutrition, stamp, facts.trial and all_over() or "")
end

function page_of(facts)
  local notes = {}
  for i, note in ipairs(facts.notes) do notes[i] = element("p", nil, text(note)) end
  local trial = facts.trial and element("p", { class = "stamp" }, text(say("stamp") .. ". " .. say("stamp_says"))) or ""
  local body = element("main", { class = facts.trial and "trial" or "real" }, trial, label_html(facts), state_html(facts),
    where_html(facts), components_html(facts), element("section", { class = "notes work" }, table.concat(notes)), trial)
  local head = '<meta charset="utf-8"/>\n<meta name="viewport" content="width=device-width, initial-scale=1"/>\n' ..
    "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\"/>\n" ..
    element("title", nil, text((facts.trial and say("stamp") .. ". " or "") .. facts.title)) .. "\n<style>" .. style .. "</style>"
  return "<!DOCTYPE html>\n" .. element("html", { lang = label_language() }, element("head", nil, head), "\n", element("body", nil, body)) .. "\n"
end
