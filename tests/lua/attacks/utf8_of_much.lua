-- check, conversion, export: instructions
function attack(fiche)
  local s = ('x'):rep(500000) for i = 1, 20 do utf8.len(s) end while true do utf8.char(120, 121) end
end
