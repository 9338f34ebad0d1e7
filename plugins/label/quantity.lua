-- The net quantity of a pack.

local function metric(amount)
  local large, small = "kg", "g"
  if amount.kind == "volume" then large, small = "l", "ml" end
  return amount.low >= 1000 and { amount:number(large), large } or { amount:number(small), small }
end

local function two_digits(number) return tamis.number(math.floor(number * 100 + 0.5) / 100, label_language()) end

-- "17.6 oz (1 lb 1.6 oz)": ounces, and from one pound to four the whole pounds behind them; 21 CFR 101.7(j), (m).
local function ounces(amount)
  local tenths = function(number) return tamis.number(math.floor(number * 10 + 0.5) / 10, "en") end
  if amount.kind == "volume" then return "Net " .. tenths(amount.low / 29.5735295625) .. " fl oz" end
  local all = amount.low / 28.349523125
  if all < 16 then return "Net Wt " .. tenths(all) .. " oz" end
  local pounds = math.floor(all / 16)
  local both = pounds .. " lb " .. tenths(all - 16 * pounds) .. " oz"
  return "Net Wt " .. (all < 64 and tenths(all) .. " oz (" .. both .. ")" or both)
end

-- Regulation (EU) 1169/2011, Article 23(1): litres or millilitres of liquids, kilograms or grams of all else. US: both
-- systems, 15 U.S.C. 1453(a)(2); 21 CFR 101.7.
local function quantity_written(amount, law)
  local figures = metric(amount)
  local words = two_digits(figures[1]) .. "\u{a0}" .. figures[2]
  return law == "us" and ounces(amount) .. " (" .. words .. ")" or words
end

-- Height of its figures in mm, by what is in the pack: 2 mm up to 50 g or ml, 3 mm up to 200, 4 mm up to 1000, 6 mm above
-- (Directive 76/211/EEC, Annex I 3.1, for packs that bear the mark of the directive; from memory). In the US it hangs on the
-- side it stands on: 1/16 inch up to 5 square inches, 1/8 inch up to 25, 3/16 inch up to 100 (21 CFR 101.7(i); from memory);
-- the middle one is taken, or the smallest for a small pack.
local function figure_height(amount, law)
  if law == "us" then return tamis.settings.small and 1.6 or 3.2 end
  for _, step in ipairs({ { 50, 2 }, { 200, 3 }, { 1000, 4 } }) do
    if amount.low <= step[1] then return step[2] end
  end
  return 6
end

-- Words and height of figures, or nil and what is missing: {key, values, element}.
function quantity_of(fiche, law)
  local setting, yield = tamis.settings.quantity, fiche:yields()[1]
  local amount
  if setting then
    amount = tamis.amount(setting, fiche.system, fiche.language)
    if not amount or not amount.low then return nil, { key = "quantity_unread", values = { what = setting } } end
  elseif yield and yield:get("each") then
    amount = yield:value("each")
  end
  if not amount then return nil, { key = "no_quantity", element = yield } end
  local weighs = amount.kind == "mass" or amount.kind == "volume"
  if not weighs or amount.form ~= "exact" or (amount.low or 0) <= 0 then
    return nil, { key = "quantity_kind", values = { what = amount:written() }, element = not setting and yield or nil }
  end
  return { words = quantity_written(amount, law), height = figure_height(amount, law) }
end
