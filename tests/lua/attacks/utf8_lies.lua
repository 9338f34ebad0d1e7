-- check, conversion, export: harmless
function attack(fiche)
  for _, words in ipairs({'\xff', '\xc3', '\xf4\x90\x80\x80', '\xed\xa0\x80', '\x80', ''}) do
    pcall(utf8.len, words, math.mininteger, math.maxinteger)
    pcall(utf8.codepoint, words, 1, -1)
    pcall(utf8.offset, words, math.mininteger)
    pcall(utf8.offset, words, math.maxinteger, 1)
    pcall(function() for p, c in utf8.codes(words) do end end)
    pcall(function() for p, c in utf8.codes(words, true) do end end)
    tamis.length(words) tamis.words(words) tamis.upper(words) tamis.lower(words) tamis.trim(words) tamis.escape(words) tamis.count_words(words)
  end
  assert(not pcall(utf8.char, -1))
  assert(not pcall(utf8.char, 1 << 40))
end
