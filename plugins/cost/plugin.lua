-- What a dish costs. What is said is worked out in facts.lua; page.lua and text.lua set it.

function cost(fiche)
  speak(fiche)
  return page_of(facts_of(fiche))
end

function cost_text(fiche)
  speak(fiche)
  return text_of(facts_of(fiche))
end
