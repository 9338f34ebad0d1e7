-- check, conversion, export: harmless
function attack(fiche)
  for _, pattern in ipairs({'%', '[', '[^', '[a', '[%', '(', ')', '%b', '%bx', '%f', '%f[', '(()', '%1', '(%1)', '[a-', '[]', '[^]', '[%a-'}) do
    assert(not pcall(string.match, 'abc', pattern), pattern)
    pcall(string.gsub, 'abc', pattern, '%1')
  end
end
