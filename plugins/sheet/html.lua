-- Pieces of HTML. Text becomes HTML in one place, `text`; whatever these functions are given as content is HTML already.

local units = { g = true, kg = true, ml = true, l = true, cm = true, mm = true, min = true, h = true, ["%"] = true }

-- Figures in plain words stay with their unit too: "8 °C", "6 h".
function text(words)
  words = words:gsub("(%d) (°)", "%1\u{a0}%2")
  words = words:gsub("(%d) ([%a%%]+)", function(figure, unit) return units[unit] and figure .. "\u{a0}" .. unit end)
  return tamis.escape(words)
end

-- element("td", {class = "amount"}, "300 g"): attributes are escaped here; false or nil leaves one out, true gives it empty.
-- Contents that are nil or false are left out. What comes of it is HTML that reads as XML too.
function element(name, attributes, ...)
  local out = { "<", name }
  for attribute, value in pairs(attributes or {}) do
    if value == true then
      out[#out + 1] = " " .. attribute .. '=""'
    elseif value then
      out[#out + 1] = " " .. attribute .. '="' .. text(tostring(value)) .. '"'
    end
  end
  out[#out + 1] = ">"
  for i = 1, select("#", ...) do
    local content = select(i, ...)
    if content then out[#out + 1] = content end
  end
  out[#out + 1] = "</" .. name .. ">"
  return table.concat(out)
end

-- The element, or nil when there is nothing to put in it.
function element_if(name, attributes, content)
  if content and content ~= "" then return element(name, attributes, content) end
end

function soft(html) return html and element("span", { class = "soft" }, html) end

-- What the list holds, without the gaps; `between` stands between two.
function join(list, between, count)
  local out = {}
  for i = 1, count or #list do
    if list[i] and list[i] ~= "" then out[#out + 1] = list[i] end
  end
  return table.concat(out, between or "")
end

-- A string as CSS must have it between quotes: letters, digits, spaces stand for themselves, all else as a code point. No
-- quote, no backslash and no "</style>" can come out of it.
function css_string(words)
  local out = {}
  for _, point in utf8.codes(words) do
    local character = point < 128 and string.char(point) or ""
    out[#out + 1] = character:match("[%w ]") or string.format("\\%06x ", point)
  end
  return '"' .. table.concat(out) .. '"'
end
