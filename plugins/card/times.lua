-- How long it takes, only where every step states it: prepTime, the hands-on time of steps without heat; cookTime, all of
-- the time of steps on the hob or in the oven; totalTime, where one step follows the other. Terms of schema.org.

local hot = { hob = true, oven = true, grill = true, fryer = true }

local function is_hot(step)
  if #step:all("oven-temp") > 0 then return true end
  local on = step:get("on")
  if not on then return false end
  for _, oven in ipairs(tamis.kitchen:all("oven")) do
    if oven:get("id") == on then return true end
  end
  return rawget(hot, on) == true
end

-- An exact time; nil where it is not stated, false where it is no figure.
local function exact(step, attribute)
  if not step:get(attribute) then return nil end
  local time = step:value(attribute)
  return time and time.form == "exact" and time or false
end

local function sum(a, b) return a and b and a + b or a or b end

function times_of(fiche)
  for _, part in ipairs(fiche:all("component", "ingredient")) do
    if part:get("from") then return {} end -- its time is stated elsewhere, if anywhere
  end
  local prep, cook, all
  local chain = #fiche:components() == 1
  local before
  for _, step in ipairs(fiche:steps()) do
    local hands, unattended = exact(step, "hands"), exact(step, "unattended")
    if hands == false or unattended == false or not (hands or unattended) then return {} end
    for _, attribute in ipairs({ "batch", "branch", "when", "optional", "repeat" }) do
      if step:get(attribute) then return {} end
    end
    if is_hot(step) then cook = sum(cook, sum(hands, unattended)) else prep = sum(prep, hands) end
    all = sum(all, sum(hands, unattended))
    local follows = not before
    for _, other in ipairs(step:waits_for()) do follows = follows or other == before end
    chain = chain and follows
    before = step
  end
  return { prepTime = prep, cookTime = cook, totalTime = chain and all or nil }
end
