-- check, conversion, export: harmless
function attack(fiche)
  string = nil
  tamis = {amount = 'mine'}
  print, pairs, assert = nil, nil, nil
end
