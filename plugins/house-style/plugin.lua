-- The house style: what a kitchen insists on in every fiche, whoever wrote it. Settings are in plugin.xml.
local settings = tamis.settings
local type_of, lower = tamis.type, tamis.lower

local function capital(letters)
  return lower(letters) ~= letters
end

local function first_letter(word)
  return word:match("^" .. utf8.charpattern)
end

-- ------------------------------------------------------------------ title

-- Words of four letters or more behind the first one, and how many of them start with a capital.
local function later_words(words)
  local count, capitals = 0, 0
  for i = 2, #words do
    if tamis.length(words[i]) >= 4 then
      count = count + 1
      if capital(first_letter(words[i])) then
        capitals = capitals + 1
      end
    end
  end
  return count, capitals
end

local function check_case(fiche, title, text)
  local words = tamis.words(title)
  if #words == 0 then
    return
  end
  local first = first_letter(words[1])
  local small = first ~= tamis.upper(first) and not capital(first)
  if small then
    local at = text.text:find(words[1], 1, true)
    local place = text:place_of(at, at + #first - 1)
    fiche:say(place, 'the title starts with a small letter', 'write "' .. tamis.upper(first) .. '"')
      :mend(place, tamis.upper(first))
    return
  end
  local count, capitals = later_words(words)
  if settings.title_form == "title" then
    if capitals < count then
      fiche:say(text, count - capitals .. ' of the title\'s words start with a small letter; this house writes Titles Like This',
        'give words of four letters or more a capital')
    end
  elseif count >= 2 and capitals == count and fiche.language:sub(1, 2) ~= "de" then
    fiche:say(text, 'every word of the title has a capital; this house writes titles like this one',
      'leave the capital to the first word and to names')
  end
end

function house_title(fiche)
  local element = fiche.root:child("title")
  local text = element and element.first_text
  if not text then
    return -- the check itself says that there is no title
  end
  local title = element.text
  local letters, most = tamis.length(title), settings.title_length
  if most > 0 and letters > most then
    fiche:say(text, 'the title has ' .. letters .. ' letters; the house\'s limit is ' .. most,
      'shorten it, and put the rest into <summary>')
  end
  if settings.title_form ~= "free" then
    check_case(fiche, title, text)
  end
end

-- ------------------------------------------------------------------ units

local function set_of(words)
  local set = {}
  for _, word in ipairs(words) do
    set[word] = true
  end
  return set
end

-- Of the house's units, those that measure the same.
local function alike(units, kind)
  local found = {}
  for _, unit in ipairs(units) do
    local one = tamis.amount("1 " .. unit) or tamis.amount("1 " .. (unit == "degc" and "°C" or unit == "degf" and "°F" or unit))
    if one and one.kind == kind then
      found[#found + 1] = unit
    end
  end
  return found
end

function house_unit(fiche)
  local units = settings.units
  if #units == 0 then
    return
  end
  local allowed = set_of(units)
  for _, element in ipairs(fiche:all("ingredient", "amount", "food-temp", "oven-temp", "medium-temp", "room-temp", "time", "length")) do
    local unit = element.unit
    if unit and not allowed[unit] then
      local value = element:value()
      if type_of(value) == "table" then
        value = value[1]
      end
      local own = alike(units, value.kind)
      local advice = #own > 0 and 'write it in ' .. table.concat(own, ", ")
        or 'leave the figure out, or put ' .. unit .. ' among the units in kitchen.xml'
      if value.kind == "mass" and allowed.g then
        advice = 'write ' .. value:rounded("metric", element.kind == "ingredient" and element.food or nil)
      end
      fiche:say(element.first_text, value .. ': this house does not measure in ' .. unit, advice)
    end
  end
end

-- ------------------------------------------------------------------ steps

function house_step_length(fiche)
  local most = settings.step_words
  if most <= 0 then
    return
  end
  for _, step in ipairs(fiche:steps()) do
    local words = step.word_count
    if words > most then
      fiche:say(step, words .. ' words in one step; this house stops at ' .. most,
        'split it, or move what is no instruction into <why>')
    end
  end
end

function house_verb(fiche)
  local verbs = settings.verbs
  if #verbs == 0 then
    return
  end
  local known = set_of(verbs)
  for _, step in ipairs(fiche:steps()) do
    local place = step.first_word
    local word = place and place.text
    if word and not known[lower(word)] then
      local near = tamis.nearest(word, verbs)
      fiche:say(place, 'the step starts with "' .. word .. '", which is none of the house\'s verbs',
        near and 'write "' .. near .. '"' or 'start with what the cook does: ' .. table.concat(verbs, ", ", 1, math.min(#verbs, 6)))
    end
  end
end

-- ------------------------------------------------------------------ what must be stated

function house_field(fiche)
  for _, wanted in ipairs(settings.required) do
    local slash = wanted:find("/", 1, true)
    if not slash then
      if #fiche:all(wanted) == 0 then
        fiche:say(nil, 'no <' .. wanted .. '>: this house wants it on every fiche', 'add <' .. wanted .. '>')
      end
    else
      local kind, attribute = wanted:sub(1, slash - 1), wanted:sub(slash + 1)
      for _, element in ipairs(fiche:all(kind)) do
        if not element:get(attribute) then
          fiche:say(element, '<' .. kind .. '> without ' .. attribute .. ': this house wants it stated',
            'add ' .. attribute .. '="..."')
        end
      end
    end
  end
end

-- ------------------------------------------------------------------ words

function house_word(fiche)
  for _, row in ipairs(settings.instead_of) do
    local colon = row:find(":", 1, true)
    local words = colon and row:sub(1, colon - 1) or row
    local instead = colon and tamis.trim(row:sub(colon + 1))
    for _, place in ipairs(fiche.root:said(words)) do
      fiche:say(place, '"' .. place.text:gsub("%s+", " ") .. '" is not said in this house',
        instead and 'write ' .. instead or 'say it otherwise')
    end
  end
end
