-- check, conversion, export: harmless
function attack(fiche)
  local t = {}
  for i = 1, 200 do t[i] = 200 - i end
  table.sort(t, function(a, b) t[#t] = nil return (a or 0) < (b or 0) end)
end
