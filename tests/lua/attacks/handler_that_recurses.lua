-- check, conversion, export: instructions
function attack(fiche)
  local function handler(message) error(message) end
  local function deep() return xpcall(deep, handler) and deep() end
  local function down(n) xpcall(function() down(n + 1) end, function() down(n + 1) end) end
  down(1)
  error("overflow of the C stack was held up")
end
