-- check, conversion, export: spent
function attack(fiche)
  local t = {} while true do t[#t + 1] = tamis.amount('1 kg') * 3 end
end
