-- What the sheet says of its own, in the language of the fiche.

local language, table_of_words, foreign

-- Chooses the words: the language of the fiche, else of the house, else English. Called once, before all else.
function speak(fiche)
  for _, tag in ipairs({ fiche.language, tamis.kitchen.language, "en" }) do
    language = (tag or ""):match("^%a+") or ""
    table_of_words = words[tamis.lower(language)]
    if table_of_words then break end
  end
  language = tamis.lower(language)
  foreign = language ~= (fiche.language:match("^%a+") or language):lower()
end

function label_language() return language end

-- The words by their key, {x} filled in; the values are put in as they are. Without a key of that name it is our mistake.
function words_of(key, values)
  local template = table_of_words[key]
  return (template:gsub("{(%w+)}", values or {}))
end

function has_words(key) return rawget(table_of_words, key) ~= nil end

-- The same as HTML: values are HTML, and words in another language than the fiche's say so.
function say(key, values)
  local html = text(table_of_words[key]):gsub("{(%w+)}", values or {})
  if foreign then return element("span", { lang = language }, html) end
  return html
end

-- For the value of an attribute: our word for it, else the author's.
function say_value(prefix, value) return has_words(prefix .. value) and say(prefix .. value) or text(value) end

function colon() return words_of("colon") end

function allergen_name(id)
  local own = allergen_names[language]
  if own then return text(own[id] or id) end
  local known, name = pcall(tamis.allergen, id, language)
  return text(known and name or id)
end
