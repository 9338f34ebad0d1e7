-- check, conversion, export: spent
function attack(fiche)
  local s = ('a '):rep(1000000) while true do tamis.words(s) end
end
