-- How long and how it keeps, as the fiche's keep says it.

-- Of the whole dish: its own, else that of the last component that has one, about what it makes.
function keep_of(fiche)
  local own = fiche.root:child("keep")
  if own then return own end
  local components = fiche:components()
  for i = #components, 1, -1 do
    for _, keep in ipairs(components[i]:children("keep")) do
      if not keep:get("of") then return keep end
    end
  end
end

local places = { fridge = "in_fridge", freezer = "in_freezer", ["dry store"] = "in_dry" }

-- Regulation (EU) 1169/2011, Article 9(1)(g) and 25(1).
function storage_of(keep)
  if tamis.settings.storage then return tamis.settings.storage end
  if not keep then return nil end
  local where, at = keep:get("where"), keep:value("at")
  local key = where and rawget(places, tamis.lower(where))
  local place = key and say(key) or where
  local degrees = at and (at.form == "exact" and say("at_degrees", { what = at:written(label_language()) }) or at:written(label_language()))
  if place and degrees then return say("store", { what = place .. ", " .. degrees }) end
  if place or degrees then return say("store", { what = place or degrees }) end
end

local openings = { "once open", "after opening", "une fois ouvert", "après ouverture" }

-- Article 25(2): what the keep says of it once open, in its own words.
function opened_of(keep)
  if tamis.settings.opened then return tamis.settings.opened end
  for sentence in ((keep and keep.prose or "") .. " "):gmatch("(.-[.!;]) ") do
    local words = tamis.lower(tamis.trim(sentence))
    for _, opening in ipairs(openings) do
      if words:sub(1, #opening) == opening then return (tamis.trim(sentence):gsub("[.;]$", "")) end
    end
  end
end

-- Article 9(1)(j) and 27: where it would be difficult to make right use of the food without them.
function use_of(keep)
  if tamis.settings.use then return tamis.settings.use end
  local list = {}
  for _, attribute in ipairs({ "thaw", "reheat" }) do
    local words = keep and keep:get(attribute)
    if words then list[#list + 1] = say("to_" .. attribute, { what = words }) end
  end
  return list[1] and table.concat(list, "; ") or nil
end

-- The date, or nil and what is missing. A keep of a range is counted by its least; whole days alone.
function date_of(keep)
  local set = tamis.settings
  local told = set.date or set.made
  if not told then return nil, { key = "no_date" } end
  local day = day_of(told)
  if not day then return nil, { key = "date_unread", values = { what = told } } end
  if set.date then return day end
  local lasts = keep and keep:value("for")
  if not lasts or lasts.kind ~= "time" or not lasts.low then return nil, { key = "no_keep", element = keep } end
  return days_after(day, math.floor(lasts.low / 86400))
end
