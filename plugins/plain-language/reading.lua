-- Reading the words of a step: whole words in any case, in the sentence itself and not in what stands beside it.

local letter = "%w\128-\255'’%-"

-- The table of the fiche's language; nil where we have none, and nothing is judged.
function words_for(fiche)
  return rawget(words, tamis.lower(fiche.language:match("^%a+") or ""))
end

-- The phrase as a pattern: whole words, any white space between.
local function pattern_of(phrase)
  local plain = tamis.lower(phrase):gsub("%p", "%%%0"):gsub("%s+", "%%s+")
  return "%f[" .. letter .. "]" .. plain .. "%f[^" .. letter .. "]"
end

local blocks = { gate = true, control = true, why = true, done = true, rescue = true, short = true, learner = true, note = true, photo = true,
  loss = true }

-- The runs of text of the sentence itself.
function texts_of(step)
  local list = {}
  for _, text in ipairs(step:texts()) do
    local at, inside = text.parent, true
    while at and at ~= step do
      if rawget(blocks, at.kind) then inside = false end
      at = at.parent
    end
    if inside then list[#list + 1] = text end
  end
  return list
end

-- Calls found(text, first, last, what follows) for each place where the phrase stands.
function each_place(texts, phrase, found)
  local pattern = pattern_of(phrase)
  for _, text in ipairs(texts) do
    local small, from = tamis.lower(text.text), 1
    while #small == #text.text do
      local first, last = small:find(pattern, from)
      if not first then break end
      found(text, first, last, small:sub(last + 1))
      from = last + 1
    end
  end
end
