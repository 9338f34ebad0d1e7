-- Steps for those who cook without the author in the room. Words by language are in words.lua.
local settings = tamis.settings

-- ------------------------------------------------------------------ length

function plain_sentence(fiche)
  local most = settings.sentence_words
  if most <= 0 or not words_for(fiche) then return end
  for _, step in ipairs(fiche:steps()) do
    local prose = step.prose:gsub("%d[.,:;]%d", "0")
    local longest = 0
    for sentence in prose:gmatch("[^.;!?]+") do longest = math.max(longest, tamis.count_words(sentence)) end
    if longest > most then
      fiche:say(step, "a sentence of " .. longest .. " words; " .. most .. " is the most that is read in one go", "make two of it")
    end
  end
end

function plain_actions(fiche)
  local most = settings.actions
  if most <= 0 then return end
  for _, step in ipairs(fiche:steps()) do
    local actions = step:actions()
    if #actions > most then
      fiche:say(step, #actions .. " actions in one step: " .. table.concat(actions, ", "), "make a step of each that has its own end")
    end
  end
end

-- ------------------------------------------------------------------ words

-- Our list for the language, or the house's.
local function trade_words(language)
  local rows = settings.trade_words
  if #rows == 0 then return language end
  local list = {}
  for _, row in ipairs(rows) do
    local word, meaning = row:match("^(.-)%s*:%s*(.+)$")
    list[word or row] = meaning or ""
  end
  return list
end

function plain_word(fiche)
  local language = words_for(fiche)
  if not language then return end
  local all = tamis.lower(fiche.root.text)
  for word, meaning in pairs(trade_words(language)) do
    local known = not all:find(tamis.lower(word), 1, true)
    for _, step in ipairs(known and {} or fiche:steps()) do
      local explained = step:child("learner") or step:child("why")
      each_place(texts_of(step), word, function(text, first, last, after)
        if known then return end
        known = true
        if not explained and not after:find("^%s*[(,–]") then
          fiche:say(text:place_of(first, last), '"' .. text.text:sub(first, last) .. '" is a word of the trade',
            meaning ~= "" and "write \"" .. meaning .. "\", or put it in brackets behind" or "say what it means, in brackets behind it")
        end
      end)
    end
  end
end
