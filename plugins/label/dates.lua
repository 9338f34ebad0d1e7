-- Days of the calendar. The clock is not to be had here: the day it was made is told.

local month_days = { 31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31 }

local function days_in(year, month)
  local leap = year % 4 == 0 and (year % 100 ~= 0 or year % 400 == 0)
  return month == 2 and leap and 29 or month_days[month]
end

-- {year, month, day} of "2026-11-27"; nil when it is no day.
function day_of(words)
  local year, month, day = words:match("^(%d%d%d%d)%-(%d%d)%-(%d%d)$")
  if not year then return nil end
  local read = { tonumber(year), tonumber(month), tonumber(day) }
  if read[2] < 1 or read[2] > 12 or read[3] < 1 or read[3] > days_in(read[1], read[2]) then return nil end
  return read
end

function days_after(day, count)
  local year, month, date = day[1], day[2], day[3] + count
  while date > days_in(year, month) do
    date = date - days_in(year, month)
    month = month + 1
    if month > 12 then year, month = year + 1, 1 end
  end
  return { year, month, date }
end

-- Day, month and year, in this order and not in figures alone that could be read two ways: Regulation (EU) 1169/2011, Annex
-- X 1(a)(ii) and 2(c). In the US the month first (common practice).
function day_written(day, law)
  local month = say("month_" .. day[2])
  if law == "us" and label_language() == "en" then return month .. " " .. day[3] .. ", " .. day[1] end
  return day[3] .. "\u{a0}" .. month .. "\u{a0}" .. day[1]
end
