-- check, conversion, export: instructions
function attack(fiche)
  local words = ("a "):rep(100000)
  while true do fiche.root:said(words .. "b") end
end
