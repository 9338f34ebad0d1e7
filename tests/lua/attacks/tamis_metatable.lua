-- check, conversion, export: harmless
function attack(fiche)
  assert(getmetatable(tamis) == nil and getmetatable(fiche) == nil and getmetatable(fiche.root) == nil)
  assert(not pcall(setmetatable, fiche, {}))
  assert(not pcall(setmetatable, tamis.settings, {}))
end
