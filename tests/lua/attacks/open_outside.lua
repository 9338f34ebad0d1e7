-- check, conversion, export: harmless
function attack(fiche)
  for _, path in ipairs({'/etc/passwd', '../../../etc/passwd', '', '.', 'x\0.fiche.xml', ('x/'):rep(5000), 'kitchen.xml', '#'}) do
    local other, why = fiche:open(path)
    assert(other == nil and type(why) == 'string')
  end
end
