-- Figures for one portion, as Regulation (EU) 1169/2011 is applied; nil while any of them is not known.

function nutrition_of(fiche)
  local nutrition = fiche:nutrition("eu", (own_language()))
  if not nutrition.portion_mass or not nutrition.mass then return nil end
  local rows = {}
  for _, row in ipairs(nutrition.rows) do
    if row.lacking > 0 or not row.per_portion_text then return nil end
    rows[#rows + 1] = { name = row.name, unit = row.unit, words = row.per_portion_text .. "\u{a0}" .. row.unit, plain = row.per_portion_text, amount = row.per_portion }
  end
  return { serving = typeset(tamis.number(math.floor(nutrition.portion_mass + 0.5), (own_language())) .. " g"), rows = rows, not_weighed = nutrition.not_weighed }
end
