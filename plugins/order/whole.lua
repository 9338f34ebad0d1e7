-- Yolk and white, juice and zest: of one egg, one lemon, bought once.

local tiny = 1e-6

-- So many grams of a part are taken of the food in this row.
function take_part(row, part, grams)
  if not part then return end
  for _, one in ipairs(row.parts) do
    if one.food.id == part.id then
      one.grams = one.grams + grams
      return
    end
  end
  row.parts[#row.parts + 1] = { food = part, grams = grams }
end

local function named(list, id)
  for _, one in ipairs(list) do
    if one == id then return true end
  end
  return false
end

-- The food that this one is bought as; nil when it is bought by itself.
local function whole_of(food)
  if not food then return nil end
  if food:pack(tamis.settings.day) and not named(tamis.settings.whole, food.id) then return nil end
  return food.whole
end

-- Rows of parts go into those of the food they come of, which may be new.
function from_wholes(rows)
  local kept = {}
  for i = 1, #rows do
    local row = rows[i]
    local whole = row.weighed and #row.parts == 0 and whole_of(row.food)
    if whole then
      local into = row_of(whole, row.name)
      take_part(into, row.food, row.grams)
      into.weighed = true
      for _, dish in ipairs(row.dishes) do
        into.dishes[#into.dishes + 1] = { title = dish.title, grams = dish.grams, part = row.name }
      end
      for _, words in ipairs(row.others) do into.others[#into.others + 1] = row.name .. ": " .. words end
      row.gone = true
    end
  end
  for _, row in ipairs(rows) do
    if not rawget(row, "gone") then kept[#kept + 1] = row end
  end
  return kept
end

-- How many of the whole it takes, so that each part suffices: {count, piece (g), per (g of a part from one), left}. What
-- was bought for one part gives the others too; what no dish takes of them is left.
function pieces_of(row)
  local splits, piece = row.food:splits()
  local per_piece = piece or 100
  local plain_count = row.grams / per_piece
  local most = row.in_parts / per_piece
  local per = {}
  for _, split in ipairs(splits) do per[split.food.id] = split.grams end
  for _, part in ipairs(row.parts) do
    local one = rawget(per, part.food.id)
    if one then most = math.max(most, part.grams / one) end
  end
  local count = plain_count + most
  local whole = piece and math.ceil(count - tiny) or count
  local left = {}
  for _, split in ipairs(splits) do
    local taken = 0
    for _, part in ipairs(row.parts) do
      if part.food.id == split.food.id then taken = part.grams end
    end
    local grams = (whole - plain_count) * split.grams - taken
    if grams / split.grams >= 0.5 then
      left[#left + 1] = { name = split.food:name(order_language()), grams = grams, count = grams / split.grams }
    end
  end
  return { count = whole, exact = count, piece = per_piece, counted = piece ~= nil, left = left }
end
