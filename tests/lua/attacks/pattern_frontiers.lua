-- check, conversion, export: instructions
function attack(fiche)
  local s = ('a b '):rep(20000) while true do s:find('%f[x]x') end
end
