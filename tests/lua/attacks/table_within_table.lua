-- check, conversion, export: memory
function attack(fiche)
  local t = {} while true do t = {t, t} end
end
