-- RFC 5545: CRLF, lines folded at 75 octets, text escaped. Times float (3.3.5, form 1): the clock on the kitchen's wall. The
-- same fiches give the same bytes: DTSTAMP is the time of service, as if that were UTC.

local most = 75

-- No letter is cut in two: a byte 10xxxxxx goes on with the letter before it.
local function folded(line)
  local out, from, room = {}, 1, most
  while #line - from + 1 > room do
    local upto = from + room - 1
    while upto > from do
      local next_byte = line:byte(upto + 1)
      if next_byte < 0x80 or next_byte > 0xbf then break end
      upto = upto - 1
    end
    out[#out + 1] = line:sub(from, upto)
    from, room = upto + 1, most - 1  -- the space in front counts
  end
  out[#out + 1] = line:sub(from)
  return table.concat(out, "\r\n ") .. "\r\n"
end

local function text(words)
  return (words:gsub("\u{a0}", " "):gsub("\u{202f}", " "):gsub("\r\n?", "\n"):gsub("[\0-\9\11-\31\127]", " "):gsub("\\", "\\\\"):gsub(";", "\\;"):gsub(",", "\\,"):gsub("\n", "\\n"))
end

function ics_of(events, service)
  local out = {}
  local function add(line) out[#out + 1] = folded(line) end
  add("BEGIN:VCALENDAR")
  add("VERSION:2.0")
  add("PRODID:-//Tamis//calendar 1//EN")
  add("CALSCALE:GREGORIAN")
  for _, event in ipairs(events) do
    add("BEGIN:VEVENT")
    add("UID:" .. event.uid)
    add("DTSTAMP:" .. stamp_of(service, service.seconds) .. "Z")
    add("DTSTART:" .. stamp_of(service, event.start))
    if event.finish then add("DTEND:" .. stamp_of(service, event.finish)) end
    add("SUMMARY:" .. text(event.summary))
    if event.description then add("DESCRIPTION:" .. text(event.description)) end
    if event.place then add("LOCATION:" .. text(event.place)) end
    add("CATEGORIES:" .. text(event.dish))
    add("END:VEVENT")
  end
  add("END:VCALENDAR")
  return table.concat(out)
end
