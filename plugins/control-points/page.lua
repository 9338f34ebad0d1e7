-- The sheet as one HTML page: a table across on paper and on a wide screen, a card for each point on a phone.

local function element(name, attributes, ...)
  local out = { "<", name }
  for attribute, value in pairs(attributes or {}) do out[#out + 1] = " " .. attribute .. '="' .. tamis.escape(value) .. '"' end
  out[#out + 1] = ">"
  for i = 1, select("#", ...) do out[#out + 1] = select(i, ...) or "" end
  out[#out + 1] = "</" .. name .. ">"
  return table.concat(out)
end

-- Figures stay with their unit.
local function text(words)
  words = words:gsub("(%d) (°)", "%1\u{a0}%2"):gsub("(%d) (min)", "%1\u{a0}%2"):gsub("(%d) (h)", "%1\u{a0}%2")
  return tamis.escape(words)
end

local style = [[
:root { color-scheme: light; --ink: #1a1917; --soft: #55514a; --hair: #b9b3a7; --paper: #fffefb; --stop: #8a1230; }
* { box-sizing: border-box; }
body { margin: 0; background: var(--paper); color: var(--ink); font: 1rem/1.4 "Avenir Next", "Segoe UI", Roboto, "Noto Sans", "Liberation Sans", "DejaVu Sans", sans-serif; font-variant-numeric: lining-nums tabular-nums; overflow-wrap: break-word; }
.sheet { max-width: 84rem; margin: 0 auto; padding: 1.25rem 1rem 2.5rem; }
h1, p, table { margin: 0; padding: 0; }
header { display: flex; flex-wrap: wrap; align-items: end; justify-content: space-between; gap: .2rem 2rem; border-top: .5rem solid var(--stop); padding: .6rem 0; }
.kind { color: var(--stop); font-weight: 700; }
h1 { font: 700 1.9rem/1.15 "Iowan Old Style", Palatino, P052, "Noto Serif", "DejaVu Serif", serif; text-wrap: balance; }
.id { color: var(--soft); font-size: .875rem; }
.draft { border: 4px double var(--stop); padding: .4rem .75rem; font-weight: 700; margin-bottom: .75rem; }
table { border-collapse: collapse; width: 100%; }
th, td { text-align: left; vertical-align: top; font-weight: 400; padding: .5rem .6rem .55rem 0; }
.n { font: 700 1.5rem/1.1 "Iowan Old Style", Palatino, P052, "Noto Serif", "DejaVu Serif", serif; color: var(--stop); }
.place, .source { display: block; }
.source { color: var(--soft); font-size: .875rem; }
.limit { font-weight: 700; }
.blank { color: var(--stop); border-bottom: 2px dotted; }
.blank::before { content: "[\a0"; }
.blank::after { content: "\a0]"; }
footer { margin-top: 1rem; font-size: .875rem; color: var(--soft); max-width: 75ch; }
footer p + p { margin-top: .25rem; }
@media screen and (max-width: 59.99rem) {
  thead { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
  table, tbody { display: block; }
  tr { display: grid; grid-template-columns: 2.6rem 1fr; border: 3px solid var(--stop); margin-top: 1rem; padding: .5rem .75rem .6rem; }
  th, td { display: block; padding: .15rem 0; }
  .n { grid-row: 1; }
  td { grid-column: 1 / -1; display: grid; grid-template-columns: minmax(6.5rem, 27%) 1fr; gap: .75rem; }
  td::before { content: attr(data-head); color: var(--soft); font-weight: 400; font-size: .9rem; }
  .limit { font-size: 1.1rem; border-block: 1px solid var(--hair); padding-block: .4rem; margin-block: .25rem; }
}
@media print, (min-width: 60rem) {
  table { table-layout: fixed; border-bottom: 3px solid; }
  thead th { color: var(--soft); font-size: .875rem; border-bottom: 3px solid var(--ink); padding-bottom: .25rem; }
  tbody tr + tr > * { border-top: 1px solid var(--hair); }
  .c0 { width: 3.5%; } .c1 { width: 12%; } .c2 { width: 13%; } .c3 { width: 20%; } .c4 { width: 13%; } .c5 { width: 8.5%; } .c6 { width: 8%; } .c7 { width: 13%; }
}
@page { size: landscape; margin: 12mm; }
@media print {
  html { font-size: 10.5pt; }
  .sheet { max-width: none; padding: 0; }
  body { background: none; }
  tr { break-inside: avoid; }
  thead { display: table-header-group; }
  header, .draft, .n { -webkit-print-color-adjust: exact; print-color-adjust: exact; }
}
]]

local columns = { "hazard", "limit", "check", "often", "who", "action", "record" }

local function cell(key, words)
  local inside = words and element("span", nil, text(words)) or element("span", { class = "blank" }, say("blank"))
  return element("td", { class = key == "limit" and "limit" or "fact", ["data-head"] = say(key) }, inside)
end

local function row(number, point)
  local place = element("span", { class = "place" }, text(point.where))
  if point.source then place = place .. element("span", { class = "source" }, text(say("from", { x = point.source }))) end
  local cells = { element("th", { class = "n", scope = "row" }, tostring(number)), element("th", { class = "where", scope = "row" }, place) }
  for _, key in ipairs(columns) do cells[#cells + 1] = cell(key, point[key]) end
  return element("tr", nil, table.concat(cells)) .. "\n"
end

local function table_html(points)
  if not points[1] then return element("p", { class = "draft" }, text(say("none"))) end
  local head = { element("th", { class = "c0", scope = "col" }), element("th", { class = "c1", scope = "col" }, say("where")) }
  for i, key in ipairs(columns) do head[#head + 1] = element("th", { class = "c" .. i + 1, scope = "col" }, say(key)) end
  local body = {}
  for i, point in ipairs(points) do body[i] = row(i, point) end
  return element("table", nil, element("thead", nil, element("tr", nil, table.concat(head))), element("tbody", nil, "\n" .. table.concat(body)))
end

function page_of(fiche, points)
  local state = fiche.root:get("state") or "draft"
  local revision = fiche.root:get("revision")
  local id = { text(fiche.id) }
  if revision then id[#id + 1] = text(say("revision", { n = revision })) end
  if rawget(words.en, "state_" .. state) then id[#id + 1] = say("state_" .. state) end
  local notes = { element("p", nil, text(say("watch"))), element("p", nil, text(say("decide"))) }
  if points.missing[1] then table.insert(notes, 1, element("p", nil, element("b", nil, text(say("missing", { x = table.concat(points.missing, ", ") }))))) end
  local body = element("div", { class = "sheet" },
    element("header", nil, element("div", nil, element("p", { class = "kind" }, say("title")), element("h1", nil, text(fiche.title))),
      element("p", { class = "id" }, table.concat(id, " · "))),
    element("main", nil, state == "draft" and element("p", { class = "draft" }, text(say("draft"))) or "", table_html(points)),
    element("footer", nil, table.concat(notes)))
  local head = '<meta charset="utf-8"/>\n<meta name="viewport" content="width=device-width, initial-scale=1"/>\n' ..
    "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\"/>\n" ..
    element("title", nil, text(say("title") .. ": " .. fiche.title)) .. "\n<style>" .. style .. "</style>"
  return "<!DOCTYPE html>\n" .. element("html", { lang = sheet_language() }, element("head", nil, head), "\n", element("body", nil, body)) .. "\n"
end
