-- The control points of a dish on one sheet. What is on it is gathered in points.lua; page.lua sets it.

function control_points(fiche)
  speak(fiche)
  return page_of(fiche, points_of(fiche))
end
