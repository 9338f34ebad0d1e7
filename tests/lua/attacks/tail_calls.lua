-- check, conversion, export: instructions
function attack(fiche)
  local function f(n) return f(n + 1) end f(0)
end
