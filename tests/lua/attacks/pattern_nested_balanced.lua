-- check, conversion, export: instructions
function attack(fiche)
  local s = ('('):rep(50000) while true do s:find('%b()') end
end
