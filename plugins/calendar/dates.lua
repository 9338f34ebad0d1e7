-- Days of the Gregorian calendar as numbers, and back.

local a_day = 86400

-- Days since 1 March of the year 0: years that begin in March have the leap day at their end.
local function day_number(year, month, day)
  if month <= 2 then year, month = year - 1, month + 12 end
  return 365 * year + year // 4 - year // 100 + year // 400 + (153 * (month - 3) + 2) // 5 + day - 1
end

local function date_of(number)
  local year = (number + 1) * 400 // 146097
  while day_number(year, 3, 1) > number do year = year - 1 end
  while day_number(year + 1, 3, 1) <= number do year = year + 1 end
  local rest = number - day_number(year, 3, 1)
  local month = (5 * rest + 2) // 153
  local day = rest - (153 * month + 2) // 5 + 1
  if month >= 10 then return year + 1, month - 9, day end
  return year, month + 3, day
end

local function is_clock(hour, minute) return hour <= 23 and minute <= 59 end

-- The time of day the kitchen's first service begins.
local function first_service()
  for _, service in ipairs(tamis.kitchen:all("service")) do
    local from = service:get("from")
    if from and from:match("^%d%d:%d%d$") then return from end
  end
end

-- {day (number), clock ("19:00"), seconds (from midnight)}; nil where the setting is no day.
function service_of()
  local year, month, day, rest = (tamis.settings.service or ""):match("^(%d%d%d%d)%-(%d%d)%-(%d%d)(.*)$")
  if not year then return nil end
  local number = day_number(math.tointeger(tonumber(year)), math.tointeger(tonumber(month)), math.tointeger(tonumber(day)))
  local y, m, d = date_of(number)
  if y ~= tonumber(year) or m ~= tonumber(month) or d ~= tonumber(day) then return nil end
  local clock = rest == "" and first_service() or rest:match("^[T ](%d%d:%d%d)$")
  if not clock then return nil end
  local hour, minute = tonumber(clock:sub(1, 2)), tonumber(clock:sub(4, 5))
  if not is_clock(hour, minute) then return nil end
  return { day = number, clock = clock, seconds = hour * 3600 + minute * 60 }
end

-- Seconds from the midnight before the day of service: whole days, and seconds of the day.
function split_days(seconds)
  local days = math.floor(seconds / a_day)
  return days, math.floor(seconds - days * a_day)
end

-- "20260307T190000"
function stamp_of(service, seconds)
  local days, rest = split_days(seconds)
  local year, month, day = date_of(service.day + math.tointeger(days))
  return string.format("%04d%02d%02dT%02d%02d%02d", year, month, day, rest // 3600, rest // 60 % 60, rest % 60)
end

function clock_of(seconds) return string.format("%02d:%02d", seconds // 3600, seconds // 60 % 60) end
