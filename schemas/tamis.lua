---@meta
-- What a plugin sees, for editors that read these annotations. Made from core/lua/api.inc and globals.inc; do not
-- edit. Write ---@param fiche tamis.fiche above a plugin's function. Of Lua 5.4 a plugin has, and no others:
-- tamis, assert, error, getmetatable, ipairs, next, pairs, pcall, print, rawequal, rawget, rawlen, select, setmetatable, tonumber, tostring, type, xpcall
-- math: abs, acos, asin, atan, ceil, cos, deg, exp, floor, fmod, huge, log, max, maxinteger, min, mininteger, modf, pi, rad, sin, sqrt, tan, tointeger, type, ult
-- string: byte, char, find, format, gmatch, gsub, len, lower, match, rep, reverse, sub, upper
-- table: concat, insert, move, pack, remove, sort, unpack
-- utf8: char, charpattern, codepoint, codes, len, offset

---@class tamis.tamis
---@field api number version of this interface: 1
---@field settings tamis.settings the plugin's settings, by name with _ for -: a string, number, true or false, or a list, as the manifest says; nil when neither the kitchen nor the manifest gives one
---@field kitchen tamis.kitchen the kitchen the work is done for
tamis = {}

---reads "250 g", "82–84 °C", "1 h 30" as a fiche would; nil and why when it is no measure
---@param text string
---@param system? string
---@param language? string
---@return tamis.amount|nil
---@return string|nil
function tamis.amount(text, system, language) end

---a food of the kitchen or of the table
---@param id string
---@return tamis.food|nil
function tamis.food(id) end

---an allergen's name for people, in English or French
---@param id string
---@param language? string
---@return string
function tamis.allergen(id, language) end

---a number as people write it: "1.5", "1,5"
---@param number number
---@param language? string
---@return string
function tamis.number(number, language) end

---small letters, those with accents too
---@param text string
---@return string
function tamis.lower(text) end

---capitals, those with accents too
---@param text string
---@return string
function tamis.upper(text) end

---without white space at both ends
---@param text string
---@return string
function tamis.trim(text) end

---letters and signs in it (#text counts bytes)
---@param text string
---@return number
function tamis.length(text) end

---its words: runs of letters, digits, apostrophes and hyphens, as written
---@param text string
---@return string[]
function tamis.words(text) end

---how many words it has
---@param text string
---@return number
function tamis.count_words(text) end

---the word of the list that was most likely meant; nil when none is near
---@param word string
---@param list string[]
---@return string|nil
function tamis.nearest(word, list) end

---"amount", "element", ... for values of this table; of Lua's own values what type says
---@param value any
---@return string
function tamis.type(value) end

---its words in lines of at most so many letters, each behind the indent; a longer word stands alone
---@param text string
---@param number number
---@param indent? string
---@return string
function tamis.folded(text, number, indent) end

---text as it must stand in HTML and XML, inside attributes too
---@param text string
---@return string
function tamis.escape(text) end

---@class tamis.settings
---@field [string] string|number|boolean|string[]|nil
local settings = {}

---@class tamis.fiche
---@field id string its name in the library; "" when it has none
---@field title string the name of the dish
---@field language string language of its words: "en", "de-AT"
---@field system string|nil whose cups and spoons it means: "metric", "us", "imperial"
---@field path string the file, as it was named
---@field root tamis.element the <fiche> element
---@field mass tamis.amount|nil what all of it comes to, where the fiche lets us know
local fiche = {}

---its components, in order
---@return tamis.element[]
function fiche:components() end

---all ingredients of this file, in order, those of choices and variants too; what comes from other files is in purchases, or in linked
---@return tamis.element[]
function fiche:ingredients() end

---all steps, in order
---@return tamis.element[]
function fiche:steps() end

---what the fiche says it makes; the amounts are written for the first
---@return tamis.element[]
function fiche:yields() end

---every element of these kinds, in order
---@param ... string
---@return tamis.element[]
function fiche:all(...) end

---the elements an XPath 1.0 names, seen from the <fiche>: "//step[@on='oven']"; for an attribute or text the element that has it. Short ones alone, without predicates in predicates and axes that go sideways: they are an error
---@param xpath string
---@return tamis.element[]
function fiche:select(xpath) end

---the element that gives this id, result or part
---@param id string
---@return tamis.element|nil
function fiche:find(id) end

---all that a step can take: ingredients, parts, results, components
---@return tamis.thing[]
function fiche:things() end

---another fiche of the library, to read: "../base/custard.fiche.xml"; nil and why when it cannot be opened
---@param reference string
---@return tamis.fiche|nil
---@return string|nil
function fiche:open(reference) end

---what open takes for each fiche of the library, this one too, in the order of their names; empty where there is no folder to list
---@return string[]
function fiche:library() end

---a copy in "metric", "us" or "imperial", as tamis convert makes it, the author's figures kept beside in was, and what its reader must know; nil and why when the fiche does not say whose units it means
---@param system string
---@return tamis.fiche|nil
---@return string[]
function fiche:converted(system) end

---each allergen that is in it, may be, or is stated: {id, eu, us (the law names it), level ("contains" by what a food is or by its specification, "assumed" because it is usual, "option" with what may be added or taken instead, "may", "none"), stated ("contains", "may", "no"), sources: list of {food, level, specified?, cross_contact, element?}}; the foods of which nothing is known; whether the author states them
---@return table
---@return string[]
---@return boolean
function fiche:allergens() end

---the ingredient list in the order of the law, "eu" or "us": {name, runs: list of {text, marked}, grams, share, percent?, small, weighed, parts}; form "together" or "components"; whether water was left out; what stands behind Contains in the US
---@param law? string
---@param form? string
---@param language? string
---@return table
---@return boolean
---@return string[]
function fiche:ingredient_list(law, form, language) end

---{mass?, portions?, pieces, portion_mass?, served, rows: list of {name, unit, whole, lacking (g of foods of which it is not known), per_100_g?, per_portion?, per_100_g_text?, per_portion_text? (rounded as the law says)}, components: list of {component, grams, and each row by its name}, lacking: list of {food, grams, all, what}, not_weighed: list of string}
---@param law? string
---@param language? string
---@return table
function fiche:nutrition(law, language) end

---by the kitchen's prices of a day ("2026-03-01"; the latest when not given): {currency, foods and packaging: lists of {name, component?, grams?, bought?, cost?, open?, since?}, food, hands, packed, left_over, batch, portion?, price?, net?, each with its _text, food_share?, share?, aim?, unpriced and all (g), hour_known, seconds, steps_unstated, complete, portions?, pieces, components: list of {component, food, hands, both}}
---@param day? string
---@return table
function fiche:cost(day) end

---what a batch takes from the store, line by line, that of components from other files too: {name, food?, element (the ingredient), share (how many times its own file's batch is taken), grams?, bought? (g with the trim on top), counts, trace, from? (title of the component in another file), parts: list of {name, food?, grams?} where yolk or zest is taken by itself}; and what is made in the house by another fiche: {title, fiche, grams, batches}
---@param day? string
---@return table
---@return table
function fiche:purchases(day) end

---its steps laid backwards from service at "19:00", each as late as order, waits, days and keeping allow and hands-on work within the house's hours: {step, start, finish (seconds from the midnight before the day of service, before it negative), stated (false: it says no time and has no length), out_of_hours}; of a range the middle; nil when its times cannot all be kept
---@param clock string
---@return table|nil
function fiche:timetable(clock) end

---what keeps masses and totals from being sure: {kind, what, grams, element?}; kind "no_mass", "divided", "loss_unknown", "taken_out", "cooked_down", "left_behind", "yield_over", "yield_for_mass" or "file_missing"
---@return table
function fiche:doubts() end

---foods in it without a supplier's dated specification
---@return string[]
function fiche:assumed() end

---its steps, or those of one component, as a picture of boxes and arrows, as tamis show --as svg draws it: one SVG document
---@param component? string
---@return string
function fiche:graph(component) end

---adds a finding; where is an element, text or place; nil marks the title
---@param where? tamis.element|tamis.text|tamis.place
---@param message string
---@param advice? string
---@return tamis.finding
function fiche:say(where, message, advice) end

---@class tamis.element
---@field kind string "ingredient", "step", ...; "foreign" for a house's own, "unknown" for a mistyped one
---@field name string its name as written
---@field id string|nil its id
---@field text string all words in it, marks included, white space folded; of a foreign element its XML, of a comment nothing
---@field own_text string its own words without those of elements in it, white space folded
---@field prose string the words of its sentence: marks included, blocks (gate, note, ...) left out, white space folded
---@field parent tamis.element|nil the element it stands in
---@field component tamis.element|nil the component it stands in, or is
---@field fiche tamis.fiche|nil the fiche it is of; nil for one of the kitchen file
---@field place tamis.place its start tag: what a finding about it marks
---@field mark boolean it stands in the line of a sentence
---@field unit string|nil id of the unit that its own text states a measure in, as of amount; nil where it states none
---@field first_text tamis.text|nil the first run of text in it at any depth, with its place: quicker than texts()[1]
---@field word_count number how many words its prose has
---@field first_word tamis.place|nil the first word in it at any depth, as place.text and where it stands
---@field label string how a cook calls it: the author's name, the food's in the language of the fiche, the title, what it makes, else the id (ingredient, part, component, step, use, tool, equipment)
---@field title string its heading (fiche, component, variant)
---@field food tamis.food|nil the food it is, where the kitchen or the table knows it (ingredient, part, swap, override)
---@field amount tamis.amount|nil the amount as the author wrote it; nil when there is none, or none that can be read (ingredient, amount)
---@field also tamis.amount|nil the author's same figure in a second system; for a length its first (ingredient, amount, food-temp, oven-temp, medium-temp, room-temp, length, override)
---@field counts boolean is of the food: not the bath, boiling water, fat for the tin, flour for the bench (ingredient, part)
---@field mass tamis.amount|nil grams: what goes in, what a component comes to, what is lost, what is taken; nil where the fiche does not let us know (ingredient, part, component, loss, use)
---@field number number its place among those beside it, from 1; a step's within its component (step, component)
---@field mass_in tamis.amount|nil all that goes into it (step)
---@field mass_out tamis.amount|nil what comes of it (step)
---@field temperature tamis.amount|nil of the food, in its core: as the step leaves it, as the use or ingredient goes in, of the component in the end; at_least or at_most where one end is open, nil where both are (step, use, ingredient, part, component)
---@field heated_to number|nil the highest temperature in °C that all of it has surely been at; nil where nothing is known (step, component)
local element = {}

---what an attribute says; a name that this kind of element cannot have is an error, prefixed names are free
---@param attribute string
---@return string|nil
function element:get(attribute) end

---names of the attributes it has, in order
---@return string[]
function element:attributes() end

---the measure its own text, or the attribute, states: a list of amounts where lengths are wanted ("36 × 26 cm"); nil and why when it cannot be read, nil alone when it is not there
---@param attribute? string
---@return tamis.amount|tamis.share|number|tamis.amount[]|nil
---@return string|nil
function element:value(attribute) end

---where the value of an attribute stands; the start tag when it has it not
---@param attribute string
---@return tamis.place
function element:place_of(attribute) end

---the elements directly in it, of these kinds when given
---@param ... string
---@return tamis.element[]
function element:children(...) end

---the first of that kind directly in it
---@param kind string
---@return tamis.element|nil
function element:child(kind) end

---as of a fiche, seen from this element: "use[@at]"
---@param xpath string
---@return tamis.element[]
function element:select(xpath) end

---every element in it at any depth, of these kinds when given, in order
---@param ... string
---@return tamis.element[]
function element:all(...) end

---where these words stand in it at any depth, within one run of text: whole words, in any case, any white space between
---@param words string
---@return tamis.place[]
function element:said(words) end

---every run of text in it at any depth, in order, with its place
---@return tamis.text[]
function element:texts() end

---its content as printed: a block (gate, note, ...) is an element; the prose between two blocks is a list of strings (white space folded) and of marks (elements)
---@return table
function element:runs() end

---its prose alone, as one list of strings and marks
---@return table
function element:sentence() end

---the elements in it that stand on lines of their own
---@return tamis.element[]
function element:blocks() end

---what its from attribute names in another file: a component, or the <fiche> when no part is named; nil and why when it cannot be opened
---@return tamis.element|nil
---@return string|nil
function element:linked() end

---between which shares, 0 to 1, it is "water", "fat", "protein", "sugars", "other carbohydrate", "fibre", "ash", "salt" or "alcohol"; 0 and 1 where nothing is known (step, use, ingredient, part, component)
---@param what string
---@return number
---@return number
function element:share_of(what) end

---ids of those in it, of those assumed because they are usual in such a food, of those that a supplier does not rule out (step, use, ingredient, part, component)
---@return string[]
---@return string[]
---@return string[]
function element:allergens() end

---what keeps its "mass", "composition" or "temperature" from being exact; nil when nothing does (step, use, ingredient, part, component)
---@param what string
---@return string|nil
function element:why_open(what) end

---the temperature of the food as its steps leave it, over the time that they state, as one SVG document: marks are the numbers of the steps, the line has a gap where nothing is known; nil and why where there is nothing to draw (component)
---@return string|nil
---@return string|nil
function element:curve() end

---the picture its href names, a PNG or JPEG of at most 2 MB in the folder of the library, as a data: URI; nil and why when it cannot be read (photo)
---@return string|nil
---@return string|nil
function element:data() end

---the ingredients, parts, components or steps whose results its of names (use)
---@return tamis.element[]
function element:targets() end

---the trade's words of do: "fold", "chill" (step)
---@return string[]
function element:actions() end

---names of what comes of it (step)
---@return string[]
function element:makes() end

---what it takes, in order, what is carried on from the step before too (step)
---@return tamis.taking[]
function element:takes() end

---what comes of it (step)
---@return tamis.thing[]
function element:gives() end

---the steps that must have ended (step)
---@return tamis.element[]
function element:waits_for() end

---what says that something does not go on (step)
---@return tamis.element[]
function element:losses() end

---conversions: gives an attribute, or takes it away with nil
---@param attribute string
---@param text? string
function element:set(attribute, text) end

---conversions: replaces its own text
---@param text string
function element:set_text(text) end

---conversions: a new element in it, at the end or before one that is there
---@param kind string
---@param before? tamis.element|tamis.text
---@return tamis.element
function element:add(kind, before) end

---conversions: new text in it, at the end or before what is there
---@param text string
---@param before? tamis.element|tamis.text
---@return tamis.text
function element:add_text(text, before) end

---conversions: takes it out
function element:remove() end

---@class tamis.text
---@field kind string "text"
---@field text string the characters as they stand, white space too
---@field parent tamis.element the element it stands in
---@field place tamis.place all of it
local text = {}

---these bytes of it, counted as string.find counts them
---@param first integer
---@param last integer
---@return tamis.place
function text:place_of(first, last) end

---conversions: writes other words for these bytes; its text is as long as the new words make it
---@param first integer
---@param last integer
---@param text string
function text:replace(first, last, text) end

---@class tamis.place
---@field line number from 1
---@field column number from 1, in Unicode scalars
---@field text string the source there
local place = {}

---@class tamis.finding
local finding = {}

---adds a related place
---@param where? tamis.element|tamis.text|tamis.place
---@param message string
---@return tamis.finding
function finding:also(where, message) end

---a sure fix: the text, or the value of an attribute, at that place becomes this; said only when nothing else could be meant
---@param where? tamis.element|tamis.text|tamis.place
---@param text string
---@return tamis.finding
function finding:mend(where, text) end

---@class tamis.amount
---@field kind string "mass", "volume", "length", "count", "time", "temperature", "temperature difference"
---@field form string "exact", "range", "at_least", "at_most" or "words"
---@field about boolean the author says "about"
---@field words string|nil id of the trade word that stands for a figure: "to-taste", "overnight"
---@field low number|nil the lower figure in g, ml, mm, pieces, s or °C; of an exact one the figure; nil for words
---@field high number|nil the upper figure, in the same
---@field middle number|nil halfway between the two
---@field unit string|nil id of the unit it is written in: "g", "cup-us", "degc", "min"; of several the first
---@field system string|nil whose unit that is: "metric", "us", "imperial"; nil for everyone's
---@operator add(tamis.amount): tamis.amount
---@operator sub(tamis.amount): tamis.amount
---@operator mul(number): tamis.amount
---@operator div(number): tamis.amount
---@operator div(tamis.amount): number
---@operator unm: tamis.amount
---@operator concat(any): string
local amount = {}

---the same in another unit of its kind, exact
---@param unit string
---@return tamis.amount
function amount:to(unit) end

---the middle as a number of that unit
---@param unit string
---@return number
function amount:number(unit) end

---as this kitchen's scales, spoons and thermometers can measure it, in "metric", "us" or "imperial"; for is the food, or "oven" for an oven's dial; a food's "at least" goes up and its "at most" down
---@param system string
---@param for_? tamis.food|"oven"
---@return tamis.amount
function amount:rounded(system, for_) end

---as people write it: "1 ½ cups", "82–84 °C"; in the language of the fiche at hand when not given
---@param language? string
---@return string
function amount:written(language) end

---an exact time as ISO 8601: "PT1H30M"
---@return string
function amount:iso() end

---@class tamis.share
---@field form string "fraction", "rest" or "amount"
---@field fraction number|nil 0 to 1
---@field amount tamis.amount|nil the amount that says how much
---@field text string as the author wrote it
local share = {}

---@class tamis.food
---@field id string "butter-unsalted"
---@field role string what it does: "flour", "sugar", "setting", ...
---@field own boolean the kitchen's own
---@field trim number|nil the share of it as bought that is thrown away, 0 to 1
---@field supplier string|nil who sells it to the house
---@field stock tamis.amount|nil what the kitchen file says is in the store
---@field whole tamis.food|nil what it is bought as where it is not bought by itself: the egg of a yolk, the lemon of its juice; one with a pack in the kitchen file first
local food = {}

---by the kitchen's prices of a day, the latest when not given: what is in a pack, what it costs, the currency
---@param day? string
---@return tamis.amount|nil
---@return number|nil
---@return string|nil
function food:pack(day) end

---what one usual piece of it gives, yolk and white, juice and zest: {food, grams}; and what the piece weighs. Of a food that is not counted, what 100 g of it give
---@return table
---@return number|nil
function food:splits() end

---how it is called, in English or French
---@param language? string
---@return string
function food:name(language) end

---ids of the allergens in it: the supplier's word where there is one, else assumed of the generic food
---@return string[]
function food:allergens() end

---allergens that its supplier does not rule out
---@return string[]
function food:may_contain() end

---grams of one ml; form as in "sifted"
---@param form? string
---@return number|nil
function food:density(form) end

---grams of one piece
---@param size? string
---@return number|nil
function food:piece(size) end

---g in 100 g of the edible part: "water", "protein", "fat", "saturated", "carbohydrate", "sugars", "fibre", "ash", "alcohol"; "energy" kcal, "sodium" mg; nil when it is not known, which is not nought
---@param what string
---@return number|nil
function food:per_100_g(what) end

---@class tamis.kitchen
---@field name string what the house is called; "" without a kitchen file
---@field language string language of the house
---@field system string|nil household measures of the house
---@field altitude tamis.amount|nil height above the sea
---@field root tamis.element|nil the <kitchen> element
local kitchen = {}

---every element of these kinds in the kitchen file
---@param ... string
---@return tamis.element[]
function kitchen:all(...) end

---what the house means by a trade word
---@param word string
---@return tamis.amount|nil
function kitchen:meaning(word) end

---@class tamis.thing
---@field kind string "ingredient", "part", "result" or "component"
---@field id string "" when nothing names it
---@field label string how a cook calls it
---@field element tamis.element the ingredient, part or component; of a result the step that makes it
---@field maker tamis.element|nil the step that makes it
---@field counts boolean is of the food
---@field mass tamis.amount|nil all of it, in grams
---@field temperature tamis.amount|nil as its step leaves it, or as it starts; as of an element
local thing = {}

---as of an element
---@param what string
---@return number
---@return number
function thing:share_of(what) end

---as of an element
---@return string[]
---@return string[]
---@return string[]
function thing:allergens() end

---who takes of it, in order of steps
---@return tamis.taking[]
function thing:takings() end

---@class tamis.taking
---@field thing tamis.thing what is taken
---@field step tamis.element by which step
---@field element tamis.element|nil the use mark; nil when it is carried on from the step before without a word
---@field take string "all", "share", "amount", "rest" or "unstated"
---@field share number|nil 0 to 1
---@field mass tamis.amount|nil grams that go in
---@field temperature tamis.amount|nil as it goes in
local taking = {}

---as of an element
---@param what string
---@return number
---@return number
function taking:share_of(what) end
