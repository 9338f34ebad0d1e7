-- The label of a dish. What it says is worked out in facts.lua; page.lua and text.lua set it.

function label(fiche)
  speak(fiche)
  return page_of(facts_of(fiche))
end

function label_text(fiche)
  speak(fiche)
  return text_of(facts_of(fiche))
end
