-- check, conversion, export: instructions
function attack(fiche)
  local s = ('1 kg + '):rep(30000) while true do tamis.amount(s) end
end
