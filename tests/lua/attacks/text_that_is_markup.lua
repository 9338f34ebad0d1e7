-- conversion: harmless
function attack(fiche)
  fiche.root:child('title'):set_text('</title><step>&amp;]]>" <!-- -->')
  assert(fiche.title == '</title><step>&amp;]]>" <!-- -->')
end
