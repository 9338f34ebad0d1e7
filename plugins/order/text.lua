-- The list as plain text, supplier by supplier, 78 letters wide.

local width = 78

local function wrapped(words, indent) return tamis.folded(words, width, indent) end

local function padded(words, size) return words .. string.rep(" ", math.max(0, size - tamis.length(words))) end

-- "2 × 5 kg" where there are packs, else how much; "" of what nobody can weigh.
local function order_words(row)
  if row.packs then return row.packs > 0 and written(row.packs) .. " × " .. row.pack or "0" end
  if not row.unit then return "–" end
  return quantity(row.short, row.unit)
end

local function figures(row)
  local out = {}
  if row.unit and (row.packs or row.stock or row.as_bought > row.needed + 1e-6) then
    out[1] = say("of_need", { n = quantity(row.needed, row.unit) })
    if row.as_bought > row.needed + 1e-6 then out[2] = say("of_bought", { n = quantity(row.as_bought, row.unit) }) end
    if row.stock then out[#out + 1] = say("of_stock", { n = quantity(row.stock, row.unit) }) end
    if row.left then out[#out + 1] = say("of_left", { n = quantity(row.left, row.unit) }) end
    if row.sum and row.sum > 0 then out[#out + 1] = money(row.sum):gsub("%.", tamis.number(0.5, order_language()):sub(2, 2)) .. "\u{a0}" .. row.currency end
  end
  return table.concat(out, ", ")
end

local function add_row(out, row, size)
  local line = "  " .. padded(order_words(row), size) .. "  " .. row.name
  out[#out + 1] = line
  local indent = string.rep(" ", size + 4)
  local said = figures(row)
  if said ~= "" then out[#out + 1] = wrapped(said, indent) end
  local left = parts_left(row)
  if left ~= "" then out[#out + 1] = wrapped(say("left_parts", { what = left }), indent) end
  if not row.listed and row.food then table.remove(row.notes) end  -- its heading says it
  if row.notes[1] then out[#out + 1] = wrapped(table.concat(row.notes, "; "), indent) end
  out[#out + 1] = wrapped(say("is_for", { what = dishes_of(row) }), indent)
end

local function add_sums(out, rows)
  local sums, order_of, without = {}, {}, 0
  for _, row in ipairs(rows) do
    if not row.sum then without = without + 1
    elseif row.sum > 0 then
      if not rawget(sums, row.currency) then order_of[#order_of + 1] = row.currency end
      sums[row.currency] = (rawget(sums, row.currency) or 0) + row.sum
    end
  end
  if not order_of[1] then return end
  local parts = {}
  for i, currency in ipairs(order_of) do
    parts[i] = money(sums[currency]):gsub("%.", tamis.number(0.5, order_language()):sub(2, 2)) .. "\u{a0}" .. currency
  end
  local line = say("all_in_all") .. ": " .. table.concat(parts, " + ")
  if without > 0 then line = line .. "; " .. say("unpriced", { n = written(without) }) end
  out[#out + 1] = "\n" .. line
end

function text_of(list)
  local out = { say("title"), string.rep("=", tamis.length(say("title"))), "", say("made") }
  for _, one in ipairs(list.made) do
    out[#out + 1] = wrapped(one.fiche.title .. ": " .. one.words, "  ")
  end
  local heading, size = nil, 0
  for _, row in ipairs(list.rows) do size = math.max(size, tamis.length(order_words(row))) end
  for _, row in ipairs(list.rows) do
    local its = row.supplier ~= "" and row.supplier or say(row.listed and "no_supplier" or "not_listed")
    if its ~= heading then
      heading = its
      out[#out + 1] = "\n" .. its
    end
    add_row(out, row, size)
  end
  add_sums(out, list.rows)
  if list.bases[1] then
    out[#out + 1] = "\n" .. say("made_here")
    for _, base in ipairs(list.bases) do
      out[#out + 1] = "  " .. quantity(base.grams / base.per_unit, base.unit) .. "  " .. base.title .. " (" ..
        say("its_batches", { n = written(rounded(base.batches, "kg")), id = base.id }) .. ")"
      out[#out + 1] = wrapped(say("is_for", { what = dishes_of(base) }), "    ")
    end
  end
  if list.water > 0 then out[#out + 1] = "\n" .. say("water", { n = quantity(list.water / 1000, "l") }) end
  return table.concat(out, "\n") .. "\n"
end
