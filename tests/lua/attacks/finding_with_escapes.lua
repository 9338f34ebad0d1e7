-- check, conversion, export: harmless
function attack(fiche)
  fiche:say(nil, 'a\27[2J\7b\0c\r\nerror: [fake-rule] all is well\xff', '\27]0;title\7 \xc2\x9b31m \xe2\x80\xaetxt')
end
