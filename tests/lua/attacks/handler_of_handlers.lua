-- check, conversion, export: error "C stack overflow"
function attack(fiche)
  local function handler() return xpcall(error, handler2, "again") end
  function handler2() return xpcall(error, handler, "again") end
  while true do xpcall(error, handler, "x") end
end
