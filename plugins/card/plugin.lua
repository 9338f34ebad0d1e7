-- The recipe for those outside the kitchen. What it says is gathered in facts.lua; markdown.lua sets it.

links_below = false

function card(fiche)
  speak(fiche)
  return markdown_of(facts_of(fiche, tamis.settings.wording))
end
