-- check, conversion, export: harmless
function attack(fiche)
  assert(rawget(_ENV, 'kept') == nil)
  kept = fiche
  kept_element = fiche.root
end
