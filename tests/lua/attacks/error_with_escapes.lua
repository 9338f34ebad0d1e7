-- check, conversion, export: error "red"
function attack(fiche)
  error('\27[31mred\27[0m\7\0\r\n\xff\xc2\x9b2J\xe2\x80\xae')
end
