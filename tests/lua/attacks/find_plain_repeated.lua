-- check, conversion, export: instructions
function attack(fiche)
  local s = ('a'):rep(1000000) while true do s:find(('a'):rep(1000) .. 'b', 1, true) end
end
