-- check, conversion, export: harmless
function attack(fiche)
  for _, words in ipairs({'1/0 kg', '99999999999999999999999 kg', '1e999 kg', '-1 g', '1–', '½½½ g', '0x10 g', 'nan g', '1 kg 2 kg 3 kg', '\xff g', '1\0 g'}) do
    tamis.amount(words)
  end
end
