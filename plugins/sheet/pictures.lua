-- Drawings: the temperature of the food in each component, the flow of the steps at the end; photographs.

local function shown(setting) return tamis.settings[setting] ~= "no" end

local function drawing(setting, svg, name)
  local label = " role=\"img\" aria-label=\"" .. text(name) .. "\" "
  svg = svg:gsub("^<svg xmlns=\"[^\"]*\" ", "<svg" .. label, 1)
  return element("figure", { class = tamis.settings[setting] == "screen" and "drawing on-screen" or "drawing" }, svg,
    element("figcaption", nil, text(name)))
end

-- How warm the food is, where the steps let us know at two moments.
function curve_html(component)
  local svg = shown("curve") and component:curve()
  return svg and drawing("curve", svg, words_of("curve", { x = component.title })) or nil
end

local most_steps = 40  -- more than that cannot be read at the width of a page

function flow_html(fiche)
  local count = #fiche:steps()
  if not shown("flow") or count < 2 or count > most_steps then return nil end
  return drawing("flow", fiche:graph(), words_of("flow_of", { x = fiche.title }))
end

-- The address of a photograph's picture: in the fiche itself, or in a file beside it. Nil where there is none to be had.
local function picture_of(photo)
  local href = photo:get("href") or ""
  if href:find("^data:") then return href:find("^data:image/[jpgwn][%w]+;base64,[%w+/=%s]+$") and text(href) or nil end
  return tamis.settings.photos and photo:data() or nil
end

function photo_html(photo)
  local alt = photo:get("alt") or photo.own_text
  local picture = picture_of(photo)
  if picture then
    return element("figure", nil, "<img src=\"" .. picture .. "\" alt=\"" .. text(alt) .. "\"/>",
      element_if("figcaption", nil, text(photo.own_text)))
  end
  return titled(say("photo") .. colon(), text(alt) .. " " .. soft(text(photo:get("href") or "")))
end
