-- The label as plain text, 78 letters wide.

local width = 78

local function wrapped(words, indent) return tamis.folded(words, width, indent) end

local function padded(words, size, right)
  local gap = string.rep(" ", math.max(0, size - tamis.length(words)))
  return right and gap .. words or words .. gap
end

-- Rows of cells under each other; the first column to the left, the others to the right.
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

-- Allergens in capitals, as they are set apart where type has no bold.
local function plain(runs)
  local out = {}
  for i, run in ipairs(runs) do out[i] = run.marked and tamis.upper(run.text) or run.text end
  return table.concat(out)
end

local function nutrition_rows(facts)
  if not facts.rows[1] or tamis.settings.nutrition ~= "printed" then return {} end
  local rows = { { "", facts.rows[1].hundred and say("per_100_g") or nil, facts.rows[1].portion and facts.portion_head or nil } }
  for _, row in ipairs(facts.rows) do
    local cells = { row.name }
    if row.hundred then cells[#cells + 1] = row.hundred end
    if row.portion then cells[#cells + 1] = row.portion end
    if cells[2] then rows[#rows + 1] = cells end
  end
  return rows
end

local function label_lines(facts, add, stamp)
  if facts.quantity then add(facts.quantity.words .. "\n") end
  if not facts.loose then
    add(wrapped(say("ingredients") .. say("colon") .. " " .. plain(facts.ingredients) .. ".", ""))
    if facts.law == "us" and facts.contains[1] then add(wrapped(say("contains") .. say("colon") .. " " .. table.concat(facts.contains, ", ") .. ".", "")) end
    if facts.may[1] then add(wrapped(say("may_contain") .. say("colon") .. " " .. table.concat(facts.may, ", ") .. ".", "")) end
  end
  stamp()
  for _, said in ipairs(facts.says) do
    add(wrapped(say(said[1]) .. say("colon") .. " " .. said[2] .. (said[2]:match("%.$") and "" or "."), ""))
  end
  local rows = nutrition_rows(facts)
  if rows[2] then
    stamp()
    add("\n" .. say("nutrition"))
    add(columns(rows))
  end
end

local function work_lines(facts, add)
  add("\n" .. say("where_from"))
  if not facts.allergens[1] then add("  " .. say("none")) end
  for _, row in ipairs(facts.allergens) do
    add(wrapped(row.name .. ": " .. table.concat(row.sources, "; ") .. (row.sources[1] and "; " or "") ..
      tamis.lower(say("stated")) .. ": " .. row.stated, "  "))
  end
  local head, components = component_rows(facts)
  if components[2] then
    add("\n" .. say("by_component"))
    table.insert(components, 1, head)
    add(columns(components))
  end
  add("\n" .. (facts.gaps[1] and say("not_ready") or say("ready")))
  for _, sentence in ipairs(gap_sentences(facts)) do add((wrapped("- " .. sentence, "  "):gsub("\n  ", "\n    "))) end
  if not facts.gaps[1] then add(wrapped(say("ready_says"), "  ")) end
  add("")
  for _, note in ipairs(facts.notes) do add(wrapped(note, "")) end
end

-- The label, a rule, and below it what it rests on.
function text_of(facts)
  local out = {}
  local function add(line) out[#out + 1] = line end
  local function stamp() if facts.trial then add("*** " .. tamis.upper(say("stamp")) .. " ***") end end
  stamp()
  if facts.trial then add(wrapped(say("stamp_says"), "") .. "\n") end
  add(facts.title)
  add(string.rep("=", tamis.length(facts.title)) .. "\n")
  label_lines(facts, add, stamp)
  stamp()
  add("\n" .. string.rep("-", width))
  work_lines(facts, add)
  stamp()
  return table.concat(out, "\n") .. "\n"
end
