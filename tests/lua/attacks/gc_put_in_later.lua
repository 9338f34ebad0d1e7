-- check, conversion, export: harmless
function attack(fiche)
  local m = {}
  local kept = setmetatable({}, m)
  m.__gc = function() while true do end end
  kept = nil
  local junk = {}
  for i = 1, 1000 do junk[i % 10] = ("x"):rep(100) end
end
