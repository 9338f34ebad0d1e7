-- How much: the amounts of an ingredient, one for each batch, and what a step takes of it.

-- The same element of the fiche as its author wrote it. What we work out ourselves starts from there, so that a figure is
-- rounded once. A conversion keeps ingredients, steps and marks in their order.
local of_kind = {}

local function authors(element)
  if page.original == page.fiche then return element end
  local lists = of_kind[element.kind]
  if not lists then
    lists = { page.fiche:all(element.kind), page.original:all(element.kind) }
    of_kind[element.kind] = lists
  end
  for i, one in ipairs(lists[1]) do
    if one == element then return lists[2][i] end
  end
  return element
end

-- The spellings of an ingredient's amount for the batch (nil: the first). Where the amount is given by another line, what
-- that comes to, if the fiche lets us know.
function amount_of(ingredient, batch)
  if batch then
    for _, amount in ipairs(ingredient:children("amount")) do
      if amount:get("batch") == batch then return said(amount) end
    end
    return {}
  end
  local list = said(ingredient)
  local mass = not list[1] and ingredient:get("as-much-as") and authors(ingredient).mass
  if mass then list = worked_out(mass, ingredient.food) end
  return list
end

-- Ids of the batches that have amounts of their own, in the order of the yields; {} when there is one only.
function further_batches(fiche)
  local named, list = {}, {}
  for _, ingredient in ipairs(fiche:ingredients()) do
    for _, amount in ipairs(ingredient:children("amount")) do named[amount:get("batch") or ""] = true end
  end
  for _, yield in ipairs(fiche:yields()) do
    if yield.id and named[yield.id] then list[#list + 1] = yield.id end
  end
  return list
end

-- A share of each spelling of an amount, in the steps of the kitchen's scales and spoons.
local function share_of(ingredient, share)
  local list = {}
  for i, words in ipairs(said(ingredient)) do
    local amount = tamis.amount(words, i == 1 and page.side_by_side and page.author_system or page.system)
    if amount and amount.form ~= "words" then
      local part = amount * share
      list[#list + 1] = part:rounded(amount.system or page.system or "metric", ingredient.food):written(page.fiche.language)
    end
  end
  return list
end

local function taking_of(step, mark, target)
  local only
  for _, taking in ipairs(step:takes()) do
    if taking.thing.element == target then
      if taking.element == mark then return taking end
      only = only == nil and taking or false
    end
  end
  return only or nil
end

-- What this mark takes of one ingredient, as spellings; {} where the fiche does not say.
local function taken(mark, step, ingredient)
  local taking = taking_of(step, mark, ingredient)
  local share = mark:value("take")
  if mark:get("take") and share and share.form == "amount" then return said_of(mark, "take") end
  if not taking then return {} end
  if taking.take == "all" then return amount_of(ingredient) end
  if taking.take == "share" and taking.share then
    local list = share_of(ingredient, taking.share)
    if list[1] then return list end
  end
  if taking.take == "rest" or taking.take == "share" then
    local written = taking_of(authors(step), authors(mark), authors(ingredient))
    if written and written.mass then return worked_out(written.mass, ingredient.food) end
  end
  return {}
end

-- A sentence has room for one spelling, or for the author's and its conversion. The table has them all.
local function for_sentence(list)
  return figures({ list[1], page.side_by_side and list[2] or nil })
end

-- The amount for the second batch follows that for the first, where all of it is taken.
local function of_every_batch(mark, step, ingredient)
  local amount = for_sentence(taken(mark, step, ingredient))
  if amount == "" or #page.batches == 0 then return amount end
  if #page.batches > 1 or page.side_by_side or mark:get("take") then return "" end
  local other = for_sentence(amount_of(ingredient, page.batches[1]))
  return other ~= "" and amount .. "\u{a0}| " .. other or ""
end

local function in_a_variant(ingredient) return ingredient.parent and ingredient.parent.kind == "variant" end

-- What a use mark takes, as it stands in brackets behind the words: "300 g"; "flour 260 g, sugar 200 g" where the words
-- stand for several. Nil where it is no ingredient, or the table has more than a sentence can.
function amounts_taken(mark, step)
  if not step then return nil end
  local targets, list = {}, {}
  for _, target in ipairs(mark:targets()) do
    if target.kind == "ingredient" and not in_a_variant(target) then targets[#targets + 1] = target end
  end
  for _, target in ipairs(targets) do
    local amounts = of_every_batch(mark, step, target)
    if amounts ~= "" then
      list[#list + 1] = #targets == 1 and amounts or text(target.label) .. " " .. amounts
    end
  end
  return list[1] and table.concat(list, ", ") or nil
end
