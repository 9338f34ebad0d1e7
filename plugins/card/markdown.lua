-- The card as CommonMark 0.31.2 (https://spec.commonmark.org/0.31.2/). Text becomes Markdown in one place, `md`.

-- A backslash before what means something anywhere in a line (CommonMark, and | ~ of its tables and strikethrough).
function md(text)
  text = text:gsub("[\\`*_%[%]<>|~]", "\\%0")
  return (text:gsub("&([#%w])", "\\&%1"))
end

-- ... and before what means something at its start: headings, lists, rules, underlined titles.
local function line(markdown)
  markdown = tamis.trim((markdown:gsub("[ \n\t]+", " ")))
  if markdown:find("^#") or markdown:find("^[-+]%f[%s\0]") or markdown:find("^[-=]+%s*$") or markdown:find("^%-[%s-]*%-") then
    return "\\" .. markdown
  end
  return (markdown:gsub("^(%d+)([.)])%f[%s\0]", "%1\\%2"))
end

local function strong(text)
  local inside = tamis.trim(text)
  return inside ~= "" and "**" .. md(inside) .. "**" or ""
end

-- Bold where it must not be missed. Where a letter or figure touches it, ** would not be read as bold: there it stays plain.
local function bold_runs(runs)
  local out = {}
  for i, run in ipairs(runs) do
    local before, after = rawget(runs, i - 1), rawget(runs, i + 1)
    local free = not (before and before.text:find("[%w\128-\255]$") and not before.text:find("\u{a0}$")) and not (after and after.text:find("^[%w\128-\255]"))
    out[i] = run.kind == "temperature" and free and strong(run.text) or md(run.text)
  end
  return table.concat(out)
end

local function block(one, indent)
  local heading = rawget(one, "heading")
  return indent .. line((heading and strong(heading .. say("colon")) .. " " or "") .. bold_runs(one.runs))
end

local function step_lines(step, out)
  local mark = step.number .. ". "
  local indent = string.rep(" ", #mark)
  local parts = {}
  for _, gate in ipairs(step.before) do parts[#parts + 1] = block(gate, indent) end
  local sentence = (step.lead ~= "" and strong(step.lead) .. " " or "") .. bold_runs(step.runs)
  if step.tail ~= "" then sentence = tamis.trim(sentence) .. " (" .. md(step.tail) .. ")" end
  parts[#parts + 1] = indent .. line(sentence)
  for _, one in ipairs(step.after) do parts[#parts + 1] = block(one, indent) end
  out[#out + 1] = mark .. table.concat(parts, "\n\n"):sub(#indent + 1)
end

local function group_lines(groups, out)
  for _, group in ipairs(groups) do
    if rawget(group, "heading") then out[#out + 1] = line(strong(group.heading .. say("colon"))) end
    local lines = {}
    for i, one in ipairs(group.lines) do
      lines[i] = "- " .. line(md(rawget(one, "heading") and one.heading .. say("colon") or line_words(one)))
      for _, choice in ipairs(rawget(one, "choices") or {}) do lines[i] = lines[i] .. "\n  - " .. line(md(line_words(choice))) end
    end
    out[#out + 1] = table.concat(lines, "\n")
  end
end

local function keep_line(keep)
  return line(strong(keep.heading .. say("colon")) .. " " .. md(keep.lead) .. " " .. bold_runs(keep.runs))
end

local function component_lines(component, several, out)
  if several then
    local letter = component.letter and component.letter .. ". " or ""
    local more = {}
    if component.day then more[1] = say("day", { n = component.day }) end
    if component.optional then more[#more + 1] = say("optional") end
    local heading = letter .. component.title .. (more[1] and " (" .. table.concat(more, ", ") .. ")" or "")
    out[#out + 1] = "## " .. md(heading):gsub("#+$", "\\%0")
  end
  group_lines(component.groups, out)
  for _, remark in ipairs(component.remarks) do out[#out + 1] = block(remark, "") end
  local steps = {}
  for _, step in ipairs(component.steps) do step_lines(step, steps) end
  if steps[1] then out[#out + 1] = table.concat(steps, "\n") end
  for _, keep in ipairs(component.keeping) do out[#out + 1] = keep_line(keep) end
end

function markdown_of(facts)
  local out = { "# " .. md(facts.title):gsub("#+$", "\\%0") }
  local function fact(key, words)
    if words ~= "" then out[#out + 1] = line(strong(say(key) .. say("colon")) .. " " .. words) end
  end
  if facts.draft then out[#out + 1] = line(strong(say("draft"))) end
  if facts.summary then out[#out + 1] = line(bold_runs(facts.summary)) end
  local makes = {}
  for i, words in ipairs(facts.makes) do makes[i] = i == 1 and words or say("or", { x = words }) end
  local moulds = table.concat(facts.moulds, "; ")
  fact("makes", md(join({ table.concat(makes, ", "), moulds }, " · ", 2)))
  fact("needs", md(table.concat(facts.equipment, ", ")))
  fact("allergens", md(facts.allergens.words .. " " .. (facts.allergens.stated and say("duty") or "")))
  for _, caution in ipairs(facts.cautions) do fact("caution", bold_runs(caution)) end
  for _, component in ipairs(facts.components) do component_lines(component, #facts.components > 1, out) end
  for _, keep in ipairs(facts.keeping) do out[#out + 1] = keep_line(keep) end
  return table.concat(out, "\n\n") .. "\n"
end
