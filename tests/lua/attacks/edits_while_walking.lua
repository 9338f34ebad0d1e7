-- conversion: instructions
function attack(fiche)
  local todo = fiche.root:all()
  local at = 1
  while todo[at] do
    local good, made = pcall(todo[at].add, todo[at], 'note')
    if good then todo[#todo + 1] = made end
    if not good and tostring(made):find('too large') then error(made, 0) end
    if todo[at].kind == 'component' or todo[at].kind == 'fiche' then todo[#todo + 1] = todo[at] end
    at = at + 1
  end
end
