-- check, conversion, export: harmless
function attack(fiche)
  local _ENV = {fiche = fiche}
  fiche_title = fiche.title
end
