-- RFC 4180: CRLF, quotes doubled, a header, the same number of fields in every line. A text that a spreadsheet would take
-- for a formula gets ' in front of it. Figures have a point in every language.

local function field(value)
  if value == nil or value == false then return "" end
  if type(value) == "number" then return plain(value) end
  value = value:gsub("\u{a0}", " "):gsub("\u{202f}", " ")
  if value:find("^[=+%-@\t\r]") then value = "'" .. value end
  if value:find('[",\r\n]') then return '"' .. value:gsub('"', '""') .. '"' end
  return value
end

local function line(fields)
  local out = {}
  for i = 1, #fields do out[i] = field(fields[i]) end
  return table.concat(out, ",") .. "\r\n"
end

function csv_of(list)
  local head = {}
  for i, key in ipairs({ "supplier", "food", "needed", "trim", "as_bought", "stock", "to_buy", "unit", "pack", "packs",
    "left_over", "parts_left", "price", "sum", "currency", "for_dishes", "note" }) do head[i] = say(key) end
  local out = { line(head) }
  for _, row in ipairs(list.rows) do
    local trim = row.as_bought and row.bought > 0 and not row.left_parts and row.grams < row.bought and
      math.floor(1000 * (1 - row.grams / row.bought) + 0.5) / 10
    out[#out + 1] = line({ row.supplier, row.name, rounded(row.needed, row.unit), trim, rounded(row.as_bought, row.unit),
      rounded(row.stock, row.unit), rounded(row.short, row.unit), row.unit and unit_name(row.unit) or "", row.pack, row.packs, rounded(row.left, row.unit), parts_left(row),
      row.price and money(row.price), row.sum and money(row.sum), row.currency, dishes_of(row), table.concat(row.notes, "; ") })
  end
  for _, base in ipairs(list.bases) do
    out[#out + 1] = line({ say("made_here"), base.title, rounded(base.grams / base.per_unit, base.unit), "", "", "", "", base.unit, "",
      "", "", "", "", "", "", dishes_of(base), say("its_batches", { n = plain(rounded(base.batches, "kg")), id = base.id }) })
  end
  return table.concat(out)
end
