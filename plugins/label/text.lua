-- The label as plain text, 78 letters wide.

local width = 78

local function wrapped(words, indent)
  local lines, line = {}, ""
  for word in words:gmatch("[^ \n]+") do
    if line ~= "" and tamis.length(line) + 1 + tamis.length(word) > width - #indent then
      lines[#lines + 1] = indent .. line
      line = ""
    end
    line = line == "" and word or line .. " " .. word
  end
  if line ~= "" then lines[#lines + 1] = indent .. line end
  return table.concat(lines, "\n")
end

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
  local rows = { { "", facts.rows[1].hundred and say("per_100_g") or nil, facts.rows[1].portion and facts.portion_head or nil } }
  for _, row in ipairs(facts.rows) do
    local cells = { row.name }
    if row.hundred then cells[#cells + 1] = row.hundred end
    if row.portion then cells[#cells + 1] = row.portion end
    if cells[2] then rows[#rows + 1] = cells end
  end
  return rows
end

function text_of(facts)
  local out = { facts.title, string.rep("=", tamis.length(facts.title)), "" }
  local function add(line) out[#out + 1] = line end
  add(wrapped(say("ingredients") .. say("colon") .. " " .. plain(facts.ingredients) .. ".", ""))
  if facts.law == "us" and facts.contains[1] then add(wrapped(say("contains") .. say("colon") .. " " .. table.concat(facts.contains, ", ") .. ".", "")) end
  if facts.may[1] then add(wrapped(say("may_contain") .. say("colon") .. " " .. table.concat(facts.may, ", ") .. ".", "")) end
  local rows = nutrition_rows(facts)
  if rows[2] then
    add("\n" .. say("nutrition"))
    add(columns(rows))
  end
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
  for _, gap in ipairs(facts.gaps) do add((wrapped("- " .. gap, "  "):gsub("\n  ", "\n    "))) end
  if not facts.gaps[1] then add(wrapped(say("ready_says"), "  ")) end
  add("")
  for _, note in ipairs(facts.notes) do add(wrapped(note, "")) end
  return table.concat(out, "\n") .. "\n"
end
