-- The cost sheet as plain text, 78 letters wide.

local width = 78

local function wrapped(words, indent) return tamis.folded(words, width, indent) end

local function padded(words, size, right)
  local gap = string.rep(" ", math.max(0, size - tamis.length(words)))
  return right and gap .. words or words .. gap
end

local function columns(rows)
  local sizes, lines = {}, {}
  for _, row in ipairs(rows) do
    for i, cell in ipairs(row) do sizes[i] = math.max(rawget(sizes, i) or 0, tamis.length(cell)) end
  end
  for _, row in ipairs(rows) do
    local cells = {}
    for i, cell in ipairs(row) do cells[i] = padded(cell, sizes[i], i > 1) end
    lines[#lines + 1] = "  " .. (table.concat(cells, "  "):gsub(" +$", ""))
  end
  return table.concat(lines, "\n")
end

function text_of(facts)
  local head = facts.title .. ": " .. tamis.lower(say("cost")) .. ", " .. facts.day
  local out = { head, string.rep("=", tamis.length(head)), "" }
  local function add(line) out[#out + 1] = line end
  if facts.sums[1] then
    local rows = { { "", say("batch"), facts.portions and facts.one or "" } }
    if facts.portions then rows[1][2] = say("batch") .. " (" .. facts.portions .. ")" end
    for _, row in ipairs(facts.sums) do rows[#rows + 1] = row end
    add(columns(rows))
    if facts.hands then add("  " .. facts.hands) end
  end
  if facts.sale[1] then
    add("")
    local sale = {}
    for i, row in ipairs(facts.sale) do sale[i] = { row[1], row[2] } end
    add(columns(sale))
    local note = facts.sale[3] and facts.sale[3][3] or ""
    if note ~= "" then add("  " .. note) end
  end
  if facts.dominates then add("\n" .. say("dominates") .. "\n" .. wrapped(facts.dominates, "  ")) end
  add("\n" .. say("foods"))
  local lines = { { say("name"), say("goes_in"), say("bought"), say("money"), say("of_all"), say("since") } }
  for _, line in ipairs(facts.lines) do lines[#lines + 1] = line end
  add(columns(lines))
  if facts.components[2] then
    add("\n" .. say("components"))
    local rows = { { say("component"), say("food"), say("hands"), say("both") } }
    for _, row in ipairs(facts.components) do rows[#rows + 1] = row end
    add(columns(rows))
  end
  if facts.gaps[1] then
    add("\n" .. say("open"))
    for _, gap in ipairs(facts.gaps) do add((wrapped("- " .. gap, "  "):gsub("\n  ", "\n    "))) end
  else
    add("\n" .. say("complete"))
  end
  if facts.small[1] then add(wrapped(say("not_costed", { what = table.concat(facts.small, ", ") }), "  ")) end
  add("")
  add(wrapped(say("rest"), ""))
  return table.concat(out, "\n") .. "\n"
end
