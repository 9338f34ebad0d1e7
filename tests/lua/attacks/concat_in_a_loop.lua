-- check, conversion, export: instructions
function attack(fiche)
  local s = '' while true do s = s .. 'xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx' if #s > 100000 then s = '' end end
end
