-- check, conversion, export: error "C stack overflow"
function attack(fiche)
  local t = {3, 1, 2}
  local function less(a, b) table.sort({3, 1, 2}, less) return a < b end
  table.sort(t, less)
end
