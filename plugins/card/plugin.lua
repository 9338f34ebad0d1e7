-- The recipe for those outside the kitchen. What it says is gathered in facts.lua; markdown.lua, page.lua and ldjson.lua set it.

links_below = false

function card(fiche)
  speak(fiche)
  return markdown_of(facts_of(fiche, tamis.settings.wording))
end

function web(fiche)
  speak(fiche)
  links_below = true
  local facts = facts_of(fiche, "page")
  facts.parts, facts.times, facts.nutrition = parts_of(fiche), times_of(fiche), nutrition_of(fiche)
  return page_of(with_origin(facts))
end
