-- check, conversion, export: error "string slice too long"
function attack(fiche)
  return utf8.codepoint(('x'):rep(2000000), 1, -1)
end
