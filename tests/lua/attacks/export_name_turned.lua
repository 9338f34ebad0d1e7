-- export: error "is no plain file name"
function attack(fiche)
  return {{name = 'a\xe2\x80\xaetxt.exe', bytes = 'x'}}
end
