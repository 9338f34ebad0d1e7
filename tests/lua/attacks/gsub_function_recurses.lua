-- check, conversion, export: error "C stack overflow"
function attack(fiche)
  local function f() return (('x'):gsub('x', f)) end f()
end
