-- The label of a dish. facts.lua works out ingredients, allergens and nutrition, particulars.lua all else that the law asks
-- for; page.lua and text.lua set it.

-- Says what keeps it from being printed, one thing each, where it stands.
local function refuse(fiche, facts)
  for _, gap in ipairs(facts.gaps) do
    local finding = fiche:say(gap.element, gap_words(gap, "en"), advice_on(gap))
    if gap.also then finding:also(gap.also, "this is where it stands") end
  end
end

local function made(fiche, set)
  speak(fiche)
  local facts = facts_of(fiche)
  if not facts.gaps[1] or facts.trial then return set(facts) end
  refuse(fiche, facts)
  return nil
end

function label(fiche) return made(fiche, page_of) end

function label_text(fiche) return made(fiche, text_of) end
