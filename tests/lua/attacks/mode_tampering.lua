-- check, conversion, export: error "__mode is not there"
function attack(fiche)
  setmetatable({}, {__mode = "k"})
end
