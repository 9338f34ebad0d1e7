-- The recipe in the terms of schema.org (https://schema.org/Recipe) as JSON-LD. What the fiche does not say is left out.

local escapes = { ['"'] = '\\"', ["\\"] = "\\\\", ["\n"] = "\\n", ["\r"] = "\\r", ["\t"] = "\\t" }

-- A JSON string that cannot end the <script> it stands in: no <, > or & comes out of it, nor what old readers take for a
-- line's end.
function json_string(words)
  words = words:gsub('[%c"\\<>&]', function(c) return rawget(escapes, c) or string.format("\\u%04x", c:byte()) end)
  return '"' .. words:gsub("\u{2028}", "\\u2028"):gsub("\u{2029}", "\\u2029") .. '"'
end

-- Pairs of a name and a value: a string, a number, a list, or JSON that is made already ({json = "..."}).
local function json(value, indent)
  if type(value) == "string" then return json_string(value) end
  if type(value) == "number" then return tostring(value) end
  local inner, out = indent .. " ", {}
  if rawget(value, "pairs") then
    for _, pair in ipairs(value.pairs) do out[#out + 1] = inner .. json_string(pair[1]) .. ": " .. json(pair[2], inner) end
    return "{\n" .. table.concat(out, ",\n") .. "\n" .. indent .. "}"
  end
  for _, one in ipairs(value) do out[#out + 1] = inner .. json(one, inner) end
  return "[\n" .. table.concat(out, ",\n") .. "\n" .. indent .. "]"
end

-- An object of a type; put(name, value) leaves out nil, "" and empty lists.
local function object(kind)
  local list = { { "@type", kind } }
  return { pairs = list }, function(name, value)
    if value == nil or value == "" or type(value) == "table" and not rawget(value, "pairs") and not value[1] then return end
    list[#list + 1] = { name, value }
  end
end

local function block_words(block)
  local heading = rawget(block, "heading")
  return (heading and heading .. say("colon") .. " " or "") .. plain(block.runs)
end

-- A step as one text: gates and control points are a part of it.
local function step_node(step)
  local words = {}
  for _, gate in ipairs(step.before) do words[#words + 1] = block_words(gate) end
  local tail = step.tail ~= "" and "(" .. step.tail .. ")" or nil
  words[#words + 1] = join({ step.lead, plain(step.runs), tail }, " ", 3)
  for _, block in ipairs(step.after) do
    if block.kind ~= "why" and block.kind ~= "note" then words[#words + 1] = block_words(block) end
  end
  local node, put = object("HowToStep")
  put("name", step.name)
  put("text", table.concat(words, " "))
  return node
end

local function section_node(component)
  local steps = {}
  for i, step in ipairs(component.steps) do steps[i] = step_node(step) end
  if not steps[1] then return nil end
  local node, put = object("HowToSection")
  put("name", component.title)
  put("itemListElement", steps)
  return node
end

local function instructions(components)
  local list = {}
  for _, component in ipairs(components) do list[#list + 1] = section_node(component) end
  if #components == 1 and list[1] then
    for i, step in ipairs(components[1].steps) do list[i] = step_node(step) end
  end
  return list
end

local function ingredients(components)
  local list = {}
  for _, component in ipairs(components) do
    for _, group in ipairs(component.groups) do
      for _, line in ipairs(group.lines) do list[#list + 1] = line_words(line) end
    end
  end
  return list
end

local nutrients = { energy_kcal = "calories", fat = "fatContent", saturates = "saturatedFatContent", carbohydrate = "carbohydrateContent",
  sugars = "sugarContent", fibre = "fiberContent", protein = "proteinContent" }

-- Salt is sodium × 2.5: Regulation (EU) 1169/2011, Annex I, 11.
local function nutrition_node(nutrition)
  if not nutrition then return nil end
  local node, put = object("NutritionInformation")
  put("servingSize", nutrition.serving)
  for _, row in ipairs(nutrition.rows) do
    local name = rawget(nutrients, row.name)
    if name then put(name, row.plain .. " " .. row.unit) end
    if row.name == "salt" then put("sodiumContent", string.format("%d mg", math.floor(row.amount / 2.5 * 1000 / 10 + 0.5) * 10)) end
  end
  return node
end

local function named(kind, name)
  local node, put = object(kind)
  put("name", name)
  return node
end

local function tools(facts)
  local list = {}
  for _, name in ipairs(facts.equipment) do list[#list + 1] = named("HowToTool", name) end
  for _, name in ipairs(facts.moulds) do list[#list + 1] = named("HowToTool", name) end
  return list
end

local function part_node(part)
  local node, put = object("Recipe")
  put("name", part.component.title)
  put("recipeYield", part.makes)
  put("recipeIngredient", ingredients({ part.component }))
  put("recipeInstructions", instructions({ part.component }))
  return node
end

function ldjson_of(facts)
  local settings = tamis.settings
  local node, put = object("Recipe")
  table.insert(node.pairs, 1, { "@context", "https://schema.org" })
  put("name", facts.title)
  put("inLanguage", facts.fiche.language)
  put("description", facts.summary and plain(facts.summary))
  local authors = {}
  for i, name in ipairs(facts.authors) do authors[i] = named("Person", name) end
  local house = tamis.kitchen.name ~= "" and named("Organization", tamis.kitchen.name) or nil
  put("author", authors[1] and authors or house)
  put("publisher", authors[1] and house)
  put("datePublished", settings.published)
  put("dateModified", facts.modified)
  put("image", facts.image and not facts.image.href:find("^data:") and { facts.image.href } or nil)
  put("recipeYield", facts.portions and { facts.portions, facts.makes[1] } or facts.makes[1])
  put("recipeCategory", settings.category)
  put("keywords", settings.keywords and table.concat(settings.keywords, ", "))
  for _, name in ipairs({ "prepTime", "cookTime", "totalTime" }) do put(name, facts.times[name] and facts.times[name]:iso()) end
  put("tool", tools(facts))
  put("recipeIngredient", ingredients(facts.components))
  put("recipeInstructions", instructions(facts.components))
  put("nutrition", nutrition_node(facts.nutrition))
  local parts = {}
  for i, part in ipairs(facts.parts) do parts[i] = part_node(part) end
  put("hasPart", parts)
  return json(node, "")
end
