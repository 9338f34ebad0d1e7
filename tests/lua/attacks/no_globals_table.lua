-- check, conversion, export: error "there is no global "_G""
function attack(fiche)
  _G.string = nil
end
