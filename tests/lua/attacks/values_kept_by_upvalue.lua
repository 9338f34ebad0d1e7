-- check, conversion, export: harmless
local count = 0
function counter() count = count + 1 return count end
function attack(fiche)
  assert(counter() == 1)
end
