-- check, conversion, export: harmless
function attack(fiche)
  print('\27[2J\27]0;x\7', '\0', '\xff', setmetatable({}, {__tostring = function() return '\27c' end}))
end
