-- check, conversion, export: harmless
function attack(fiche)
  for _, pattern in ipairs({'%', '[', '[^', '[a', '[%', '(', ')', '%b', '%bx', '%f', '%f[', '(()', '%1', '(%1)', '[a-', '[]', '[^]', '[%a-'}) do
    assert(not pcall(string.find, 'abc', pattern), pattern)
    assert(not pcall(string.gsub, 'abc', pattern, 'x'), pattern)
  end
end
