-- The cost sheet as one HTML page.

local function element(name, attributes, ...)
  local out = { "<", name }
  for attribute, value in pairs(attributes or {}) do out[#out + 1] = " " .. attribute .. '="' .. tamis.escape(value) .. '"' end
  out[#out + 1] = ">"
  for i = 1, select("#", ...) do out[#out + 1] = select(i, ...) or "" end
  out[#out + 1] = "</" .. name .. ">"
  return table.concat(out)
end

local function text(words) return tamis.escape(words) end

local style = [[
:root { color-scheme: light; --ink: #1b1a17; --soft: #5c574d; --hair: #d2ccbf; --paper: #fffefa; --stop: #8a1230; --bar: #0b4a63; }
* { box-sizing: border-box; }
body { margin: 0; background: var(--paper); color: var(--ink); font: 1rem/1.5 "Avenir Next", "Segoe UI", Roboto, "Noto Sans", "Liberation Sans", "DejaVu Sans", sans-serif; font-variant-numeric: lining-nums tabular-nums; }
main { max-width: 60rem; margin: 0 auto; padding: 1.5rem 1rem 3rem; }
h1, h2, p, ul, table, dl, dd { margin: 0; padding: 0; }
header { border-top: .5rem solid var(--ink); padding-top: .6rem; }
h1 { font: 700 2rem/1.1 "Iowan Old Style", Palatino, P052, "Noto Serif", "DejaVu Serif", serif; text-wrap: balance; }
h2 { font-size: 1rem; margin-bottom: .35rem; }
header p, .soft { color: var(--soft); }
.two { display: grid; gap: 1.5rem 3rem; margin-top: 1.25rem; }
@media (min-width: 46rem) { .two { grid-template-columns: 3fr 2fr; align-items: start; } }
table { border-collapse: collapse; width: 100%; }
th, td { text-align: left; font-weight: 400; vertical-align: baseline; padding: .25rem 0; border-top: 1px solid var(--hair); }
thead th, thead td { font-size: .875rem; color: var(--soft); border-top: 0; }
td.n, th.n { text-align: right; padding-left: 1rem; white-space: nowrap; }
tr.strong th, tr.strong td { font-weight: 700; border-top: 2px solid var(--ink); }
.over { color: var(--stop); font-weight: 700; }
table + .most, p + .most { margin-top: .75rem; }
.share { width: 9rem; padding-left: 1rem; }
@media (max-width: 46rem) { .share { display: none; } }
.bar { display: block; height: .7rem; background: var(--bar); min-width: 1px; }
section { margin-top: 1.75rem; }
.open { border-left: .4rem solid var(--stop); padding: .1rem 0 .1rem .9rem; }
.open h2 { color: var(--stop); }
ul { padding-left: 1.2em; }
.scroll { overflow-x: auto; }
.notes { font-size: .875rem; color: var(--soft); max-width: 65ch; }
@media print { main { padding: 0; } html { font-size: 80%; } tr { break-inside: avoid; } .bar { print-color-adjust: exact; -webkit-print-color-adjust: exact; } }
]]

local function head_row(cells)
  local out = {}
  for i, cell in ipairs(cells) do
    out[i] = cell == "" and element("td") or element("th", { scope = "col", class = i > 1 and "n" or "main" }, text(cell))
  end
  return element("thead", nil, element("tr", nil, table.concat(out)))
end

local function row_html(row, more)
  local out = { element("th", { scope = "row" }, text(row[1])) }
  for i = 2, #row do out[i] = element("td", { class = "n" }, text(row[i])) end
  return element("tr", { class = row.strong and "strong" or "line" }, table.concat(out), more or "")
end

local function sums_html(facts)
  if not facts.sums[1] then return "" end
  local body = {}
  for i, row in ipairs(facts.sums) do body[i] = row_html(row) end
  local batch = say("batch") .. (facts.portions and " (" .. facts.portions .. ")" or "")
  return element("div", nil, element("table", nil, head_row({ "", batch, facts.portions and facts.one or "" }), element("tbody", nil, table.concat(body))),
    facts.hands and element("p", { class = "soft" }, text(facts.hands)) or "")
end

local function sale_html(facts)
  if not facts.sale[1] and not facts.dominates then return "" end
  local body = {}
  for i, row in ipairs(facts.sale) do
    body[i] = element("tr", nil, element("th", { scope = "row" }, text(row[1])),
      element("td", { class = row.over and "n over" or "n" }, text(row[2])))
  end
  local note = facts.sale[3] and facts.sale[3][3] or ""
  return element("div", nil, body[1] and element("table", nil, element("tbody", nil, table.concat(body))) or "",
    note ~= "" and element("p", { class = facts.sale[3].over and "over" or "soft" }, text(note)) or "",
    facts.dominates and element("p", { class = "most" }, element("b", nil, text(say("dominates"))), "<br/>", text(facts.dominates)) or "")
end

local function foods_html(facts)
  local body = {}
  for i, row in ipairs(facts.lines) do
    local bar = row.share > 0 and element("span", { class = "bar", style = string.format("width:%d%%", math.max(1, math.floor(100 * row.share + 0.5))) }) or ""
    body[i] = row_html(row, element("td", { class = "share" }, bar))
  end
  local head = head_row({ say("name"), say("goes_in"), say("bought"), say("money"), say("of_all"), say("since"), "" })
  return element("section", nil, element("h2", nil, text(say("foods"))), element("div", { class = "scroll" },
    element("table", nil, head, element("tbody", nil, table.concat(body)))))
end

local function components_html(facts)
  if not facts.components[2] then return "" end
  local body = {}
  for i, row in ipairs(facts.components) do body[i] = row_html(row) end
  return element("section", nil, element("h2", nil, text(say("components"))), element("div", { class = "scroll" },
    element("table", nil, head_row({ "", say("food"), say("hands"), say("both") }), element("tbody", nil, table.concat(body)))))
end

local function open_html(facts)
  if not facts.gaps[1] then return element("section", nil, element("p", nil, element("b", nil, text(say("complete"))))) end
  local list = {}
  for i, gap in ipairs(facts.gaps) do list[i] = element("li", nil, text(gap)) end
  return element("section", { class = "open" }, element("h2", nil, text(say("open"))), element("ul", nil, table.concat(list)))
end

function page_of(facts)
  local body = element("main", nil, element("header", nil, element("h1", nil, text(facts.title)), element("p", nil, text(say("cost") .. ", " .. facts.day))),
    element("div", { class = "two" }, sums_html(facts), sale_html(facts)), open_html(facts), foods_html(facts), components_html(facts),
    element("section", { class = "notes" }, facts.small[1] and element("p", nil, text(say("not_costed", { what = table.concat(facts.small, ", ") }))) or "",
      element("p", nil, text(say("rest")))))
  local head = '<meta charset="utf-8"/>\n<meta name="viewport" content="width=device-width, initial-scale=1"/>\n' ..
    "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\"/>\n" ..
    element("title", nil, text(facts.title)) .. "\n<style>" .. style .. "</style>"
  return "<!DOCTYPE html>\n" .. element("html", { lang = label_language() }, element("head", nil, head), "\n", element("body", nil, body)) .. "\n"
end
