-- check, conversion, export: instructions
function attack(fiche)
  local s = ('a'):rep(100000) while true do tamis.nearest(s, {s .. 'b', ('b'):rep(100000)}) end
end
