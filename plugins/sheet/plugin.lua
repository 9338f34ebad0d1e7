-- The sheet that hangs in the kitchen: one fiche as one HTML file that needs nothing else.

-- Whether some amount is too long for the column beside the steps ("1 qt 2/3 cup 2 Tbsp"), or there is one for each of
-- several batches: then the lists run across the sheet.
local longest_beside, longest_across = 11, 18  -- letters

local function need_width(fiche)
  if #page.batches > 0 then return true end
  for _, ingredient in ipairs(fiche:ingredients()) do
    local words = amount_of(ingredient)[1] or ""
    if tamis.length(words) > longest_beside and words:find("%d") then return true end
  end
  return false
end

-- The width of the amounts, in figures, the same in every list of the sheet: left of the axis, and all of it.
local function widths(fiche)
  local left, right, all = 1, 0, 0
  local most = page.wide_lists and longest_across or longest_beside
  local function see(list)
    local whole, rest = at_the_axis(list[1] or "")
    if whole then
      left, right = math.max(left, tamis.length(whole)), math.max(right, tamis.length(rest))
    elseif list[1] and list[1]:find("%d") then
      all = math.max(all, math.min(tamis.length(list[1]), most))
    end
    if list[2] then all = math.max(all, math.min(tamis.length(list[2]), most)) end
  end
  for _, ingredient in ipairs(fiche:ingredients()) do
    see(amount_of(ingredient))
    for _, batch in ipairs(page.batches) do see(amount_of(ingredient, batch)) end
  end
  return string.format("--whole:%d;--amount:%d", left, math.max(all, left + right))
end

-- The system to convert to; nil where the fiche stands in it, or holds both already.
local function wanted_system(fiche)
  local systems = tamis.settings.systems
  if systems == "author" then return nil end
  if systems ~= "both" then return fiche.system ~= systems and systems or nil end
  if fiche.root:get("was-units") then return nil end
  return (fiche.system or "metric") == "metric" and "us" or "metric"
end

local function authors_system(fiche)
  local kept = fiche.root:get("was-units")
  if kept == "none" then return nil end
  return kept or fiche.system
end

-- The fiche in the figures that are asked for; `page` is what all other parts need to know.
local function prepare(fiche)
  local wanted, shown, told = wanted_system(fiche), fiche, nil
  if wanted then shown, told = fiche:converted(wanted) end
  page = { fiche = shown or fiche, original = fiche, converted = wanted ~= nil and shown ~= nil, author_system = authors_system(fiche),
    side_by_side = tamis.settings.systems == "both" and shown ~= nil, wording = tamis.settings.wording }
  if shown then page.told = told else page.refused = told end
  shown = page.fiche
  page.system = page.side_by_side and page.author_system or shown.system
  page.other_system = shown.system
  page.batches = further_batches(shown)
  page.letters = letters_for(shown:components())
  page.wide_lists = need_width(shown)
  return shown
end

-- Running heads and page numbers, on paper.
local function running(fiche)
  local state = words_of("state_" .. state_of(fiche))
  local revision = fiche.root:get("revision")
  local right = (revision and words_of("revision", { n = revision }) .. " · " or "") .. state
  local first = state_of(fiche) == "draft" and css_string(state) or "none"
  return "@page{@top-left{content:" .. css_string(fiche.title) .. "}@top-right{content:" .. css_string(right) ..
    "}@bottom-left{content:" .. css_string(fiche.id .. " · " .. right) .. "}@bottom-right{content:" ..
    css_string(words_of("page") .. " ") .. "counter(page) \"/\" counter(pages)}}@page:first{@top-left{content:none}" ..
    "@top-right{content:" .. first .. "}}"
end

function sheet(fiche)
  speak(fiche)
  local shown = prepare(fiche)
  local components = {}
  for i, component in ipairs(shown:components()) do components[i] = component_html(component) end
  local head = element("head", nil, '<meta charset="utf-8"/>\n',
    '<meta name="viewport" content="width=device-width, initial-scale=1"/>\n',
    "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'; img-src data:\"/>\n",
    element("title", nil, text(shown.title)), "\n<style>", style, running(shown), "</style>")
  local body = element("div", { class = "sheet", style = widths(shown) }, head_html(shown),
    element("main", nil, before_html(shown), run_html(shown:components()), strip_html(shown), table.concat(components, "\n"), tail_html(shown)),
    colophon_html(shown))
  return "<!DOCTYPE html>\n" .. element("html", { lang = shown.language ~= "" and shown.language or label_language() }, head,
    "\n", element("body", nil, body)) .. "\n"
end
