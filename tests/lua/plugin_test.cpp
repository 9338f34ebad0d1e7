#include <catch2/catch.hpp>

#include <map>

#include "core/format/format.h"
#include "core/lua/plugin.h"
#include "tests/lua/hosting.h"

using namespace tamis;
using tests::custard;
using tests::load_check;
using tests::load_plugin;
using tests::manifest_of;
using tests::said;

namespace {

/// What a check says whose body is `return VALUE` put into a finding.
std::string told(const std::string& expression) {
  const tests::Loaded loaded = load_check("fiche:say(nil, tostring(" + expression + "))");
  if (loaded.plugin == nullptr) return loaded.lines();
  const std::string line = said(*loaded.plugin, custard);
  const std::string start = "2:3 house-test: ";
  return line.starts_with(start) ? line.substr(start.size(), line.size() - start.size() - 1) : line;
}

}  // namespace

TEST_CASE("a plugin's check points into the source exactly") {
  const tests::Loaded loaded = load_check(R"(
    for _, step in ipairs(fiche:steps()) do
      for _, text in ipairs(step:texts()) do
        local first, last = text.text:find("stir")
        if first then fiche:say(text:place_of(first, last), "stirred", "fold") end
      end
    end
    fiche:say(fiche:find("milk"), "milk")
    fiche:say(fiche:find("milk"):place_of("food"), "which")
  )");
  REQUIRE(loaded.lines() == "");
  CHECK(said(*loaded.plugin, custard) ==
        "4:5 house-test: milk\n4:33 house-test: which\n7:7 house-test: stirred [fold]\n");
}

TEST_CASE("values of a fiche answer as the table says") {
  const std::pair<const char*, const char*> rows[] = {
      {"fiche.id", "custard"},
      {"fiche.title", "Vanilla custard"},
      {"fiche.language", "en"},
      {"fiche.system", "metric"},
      {"fiche.root.kind", "fiche"},
      {"#fiche:steps()", "2"},
      {"#fiche:all('use', 'time')", "4"},
      {"fiche:find('milk').kind", "ingredient"},
      {"fiche:find('custard').number", "1"},
      {"fiche:find('nothing')", "nil"},
      {"fiche:find('milk').amount", "300\u00A0g"},
      {"fiche:find('milk').label", "whole milk"},
      {"fiche:find('milk').food.role", "dairy"},
      {"fiche:find('milk').food:allergens()[1]", "milk"},
      {"fiche:find('milk'):get('food')", "milk-whole"},
      {"fiche:find('milk'):get('prep')", "nil"},
      {"fiche:find('yolks'):value('pieces')", "5.0"},
      {"fiche:steps()[1]:value('hands')", "8\u00A0min"},
      {"fiche:steps()[1]:value('hands'):iso()", "PT8M"},
      {"fiche:steps()[1].prose", "Pour the milk over the yolks, stir to 82–84 °C."},
      {"fiche:steps()[1]:blocks()[1].text", "at most 4 °C"},
      {"#fiche:steps()[1]:sentence()", "7"},
      {"'[' .. fiche:steps()[1]:sentence()[1] .. ']'", "[Pour the ]"},
      {"fiche:steps()[1]:sentence()[2].kind", "use"},
      {"#fiche:steps()[1]:runs()", "2"},
      {"fiche:all('food-temp')[1].parent.kind", "step"},
      {"fiche:all('food-temp')[1]:value().low", "82.0"},
      {"fiche:all('food-temp')[1]:value().form", "range"},
      {"fiche:all('food-temp')[1].component.title", "Custard"},
      {"fiche:all('food-temp')[1].place.line", "7"},
      {"fiche:all('use')[1]:targets()[1] == fiche:find('milk')", "true"},
      {"fiche:steps()[1]:actions()[1]", "cook"},
      {"fiche:steps()[1]:makes()[1]", "custard"},
      {"fiche:find('milk').mass", "300\u00A0g"},
      {"fiche:steps()[1].mass_in", "390\u00A0g"},
      {"fiche:steps()[1]:takes()[1].mass", "300\u00A0g"},
      {"fiche.mass", "390\u00A0g"},
      {"fiche:steps()[1].temperature", "82–84\u00A0°C"},
      {"fiche:steps()[1].heated_to", "82.0"},
      {"fiche:steps()[2]:why_open('temperature')", "how far it cools or warms in step 2 is not stated"},
      {"fiche:find('milk'):why_open('composition')", "nil"},
      {"fiche:find('milk').temperature", "0–8\u00A0°C"},
      {"fiche:find('milk'):share_of('water')", "0.8813"},
      {"select('#', fiche:steps()[1]:share_of('fat'))", "2"},
      {"table.concat(fiche:steps()[2]:allergens(), ' ')", "egg milk"},
      {"fiche:steps()[1]:takes()[1].temperature.low", "0.0"},
      {"select(2, fiche:steps()[1]:takes()[1]:share_of('salt')) < 0.01", "true"},
      {"fiche:steps()[1]:gives()[1].temperature.high", "84.0"},
      {"fiche:steps()[1]:gives()[1]:allergens()[2]", "milk"},
      {"fiche:steps()[1]:gives()[1]:share_of('water') > 0.6", "true"},
      {"fiche:all('use')[3].temperature", "82–84\u00A0°C"},
      {"fiche:steps()[2]:waits_for()[1] == fiche:steps()[1]", "true"},
      {"fiche:steps()[2]:takes()[1].thing.kind", "result"},
      {"tamis.type(fiche:find('milk').amount)", "amount"},
      {"tamis.type({})", "table"},
      {"#tamis.kitchen.name", "0"},
      {"fiche:steps()[1].word_count", "11"},
      {"fiche:steps()[1].word_count == tamis.count_words(fiche:steps()[1].prose)", "true"},
      {"fiche:steps()[1].first_word.text", "Pour"},
      {"fiche:steps()[1].first_word.column", "51"},
      {"fiche:all('food-temp')[1].unit", "degc"},
      {"fiche:find('milk').unit", "g"},
      {"fiche:steps()[1].unit", "nil"},
      {"#fiche.root:said('the')", "3"},
      {"#fiche:select('//ingredient')", "2"},
      {"fiche:select(\"//ingredient[@pieces='5']\")[1] == fiche:find('yolks')", "true"},
      {"fiche:select('//step[food-temp]/gate')[1].text", "at most 4 °C"},
      {"fiche:select('component/step[2]')[1] == fiche:steps()[2]", "true"},
      {"fiche:select('//@hands')[1] == fiche:steps()[1]", "true"},
      {"fiche:steps()[1]:select('use')[2].text", "yolks"},
      {"#fiche:steps()[1]:select('//step')", "2"},
      {"#fiche:select('//step[contains(., \"Chill\")]')", "1"},
      {"#fiche:select('//nothing')", "0"},
      {"fiche.root:said('OVER THE')[1].text", "over the"},
      {"fiche.root:said('the milk')[1]", "nil"},
      {"#fiche.root:said('cust')", "0"},
      {"#fiche.root:said('custard')", "2"},
      {"fiche.root:said('82–84 °C')[1].line", "7"},
      {"tamis.count_words(\"don't count l'eau-de-vie twice\")", "4"},
      {"table.concat(tamis.words('Fold, then bake: 20–25 min'), '|')", "Fold|then|bake|20|25|min"},
      {"tamis.upper('éclair à la crème')", "ÉCLAIR À LA CRÈME"},
      {"tamis.escape('<a \"b\" & \\'c\\'>')", "&lt;a &quot;b&quot; &amp; &#39;c&#39;&gt;"},
      {"tamis.nearest('fodl', {'bake', 'fold'})", "fold"},
      {"tamis.number(12.5, 'fr')", "12,5"},
      {"tamis.folded('crème fraîche,  then\\n salt', 13):gsub('\\n', '|')", "crème|fraîche, then|salt"},
      {"tamis.folded('fold in the whites', 9, '  '):gsub('\\n', '|')", "fold in| the| whites"},
      {"#tamis.folded('  ', 9, '  ')", "0"},
      {"tamis.allergen('milk', 'fr')", "lait"},
      {"tamis.food('butter-unsalted'):name()", "unsalted butter"},
      {"tamis.food('butter-unsalted'):per_100_g('fat') > 80", "true"},
      {"tamis.api", "1"},
  };
  for (const auto& [expression, expected] : rows) {
    CAPTURE(expression);
    CHECK(told(expression) == expected);
  }
}

TEST_CASE("amounts work as figures do, exactly") {
  const std::pair<const char*, const char*> rows[] = {
      {"tamis.amount('250 g') + tamis.amount('1 kg')", "1250\u00A0g"},
      {"tamis.amount('1 kg') - tamis.amount('250 g')", "0.75\u00A0kg"},
      {"tamis.amount('2–3 kg') * 2", "4–6\u00A0kg"},
      {"3 * tamis.amount('100 g') / 2", "150\u00A0g"},
      {"tamis.amount('1 kg') / tamis.amount('250 g')", "4.0"},
      {"tamis.amount('1 kg') == tamis.amount('1000 g')", "true"},
      {"tamis.amount('1 kg') < tamis.amount('999 g')", "false"},
      {"tamis.amount('1 kg') <= tamis.amount('1000 g')", "true"},
      {"tamis.amount('82–84 °C') + (tamis.amount('90 °C') - tamis.amount('80 °C'))", "92–94\u00A0°C"},
      {"tamis.amount('1 cup', 'us'):to('ml').unit", "ml"},
      {"tamis.amount('2 lb'):number('kg') > 0.9", "true"},
      {"tamis.amount('1003.4 g'):rounded('metric')", "1.005\u00A0kg"},
      {"tamis.amount('at least 63 °C'):rounded('us')", "at least 146\u00A0°F"},
      {"tamis.amount('at most 5.4 °C'):rounded('us')", "at most 41\u00A0°F"},
      {"tamis.amount('180 °C'):rounded('us', 'oven')", "350\u00A0°F"},
      {"tamis.amount('1 1/2 cups', 'us')", "1\u00A0½\u00A0cups"},
      {"tamis.amount('1,5 kg', 'metric', 'de'):written('fr')", "1,5\u00A0kg"},
      {"tamis.amount('to taste').words", "to-taste"},
      {"tamis.amount('at least 2 h').form", "at_least"},
      {"'need ' .. tamis.amount('3 g')", "need 3\u00A0g"},
      {"select(2, tamis.amount('3 gramms of'))", nullptr},
  };
  for (const auto& [expression, expected] : rows) {
    CAPTURE(expression);
    if (expected == nullptr)
      CHECK(told(expression).size() > 10);
    else
      CHECK(told(expression) == expected);
  }
}

TEST_CASE("a wrong name is an error that gives the nearest right one, with function, line and element in hand") {
  const std::pair<const char*, const char*> rows[] = {
      {"fiche:stepz()", "fiche has no \"stepz\"; the nearest is \"steps\""},
      {"local x = fiche:steps()[1].fod", "element has no \"fod\"; the nearest is \"food\""},
      {"local x = fiche:steps()[1].food", "<step> has no \"food\"; it is there for ingredient,part,swap,override"},
      {"fiche:find('milk'):get('perp')", "<ingredient> has no attribute \"perp\"; the nearest is \"prep\""},
      {"fiche:all('ingredeint')", "there is no kind of element \"ingredeint\"; the nearest is \"ingredient\""},
      {"tamis.amuont('x')", "tamis has no \"amuont\"; the nearest is \"amount\""},
      {"tamis.settings.lenght = 1", "cannot be written to"},
      {"local x = tamis.settings.length", "the manifest takes no setting \"length\""},
      {"tostrin(1)", "there is no global \"tostrin\"; the nearest is \"tostring\""},
      {"tamis:amount('250 g')", "calls of tamis are written with a point"},
      {"fiche.steps()", "calls of values are written with a colon"},
      {"tamis.amount('1 kg'):to('kgg')", "there is no unit \"kgg\"; the nearest is \"kg\""},
      {"local x = tamis.amount('1 kg') + tamis.amount('1 h')", "a mass and a time cannot be added"},
      {"fiche:select('//step[')", "\"//step[\" is no XPath"},
      {"fiche:select('count(//step)')", "this XPath gives no elements"},
      {"fiche:select('//*[*[*[*]]]')", "a predicate in a predicate"},
      {"fiche:select('//*[//*]')", "a path from the root in a predicate"},
      {"fiche:select('//*[a/b/c]')", "a path of more than two steps in a predicate"},
      {"fiche:select('//*/following::*')", "the axis following"},
      {"fiche:select('//*//*//*//*')", "more than three ways down"},
      {"fiche:select('//' .. ('a'):rep(300))", "an XPath of 302 bytes; 200 is the most"},
  };
  for (const auto& [body, expected] : rows) {
    CAPTURE(body);
    const tests::Loaded loaded = load_check(body);
    REQUIRE(loaded.lines() == "");
    const std::string line = said(*loaded.plugin, custard);
    CAPTURE(line);
    CHECK(line.find("plugin-error: plugin trial, house_test at plugin.lua:2") != std::string::npos);
    CHECK(line.find(expected) != std::string::npos);
  }
  const tests::Loaded loaded = load_check("local step = fiche:steps()[2]\nlocal x = step:get('do') + 1");
  CHECK(said(*loaded.plugin, custard) ==
        "8:5 plugin-error: plugin trial, house_test at plugin.lua:3, <step> in hand: attempt to add a 'string' with "
        "a 'number'\n");
}

TEST_CASE("findings made before an error are kept, and so are the rules' own") {
  const tests::Loaded loaded = load_check("fiche:say(nil, 'first') error('then this')");
  const std::string lines = said(*loaded.plugin, custard);
  CHECK(lines.find("house-test: first") != std::string::npos);
  CHECK(lines.find("then this") != std::string::npos);
}

TEST_CASE("a kitchen sets how loud a plugin's check is, and switches it off") {
  const tests::Loaded loaded = load_check("fiche:say(nil, 'here')");
  const auto document = tests::document_of(custard);
  lua::PluginChecks checks({loaded.plugin.get()});
  fiche::Kitchen kitchen;
  const auto severity = [&] {
    for (const base::Finding& finding : rules::check(*document, kitchen, fiche::empty_library(), &checks))
      if (finding.rule == "house-test") return finding.severity;
    return base::Severity::off;
  };
  CHECK(severity() == base::Severity::warning);
  kitchen.severities["house-test"] = base::Severity::error;
  CHECK(severity() == base::Severity::error);
  kitchen.severities["house-test"] = base::Severity::off;
  CHECK(severity() == base::Severity::off);
}

TEST_CASE("related places and sure fixes are carried") {
  const tests::Loaded loaded = load_check(R"(
    local milk = fiche:find("milk")
    fiche:say(milk, "a & b"):also(fiche:find("yolks"), "beside this"):mend(milk:place_of("food"), 'x"y')
  )");
  REQUIRE(loaded.lines() == "");
  const auto document = tests::document_of(custard);
  lua::PluginChecks checks({loaded.plugin.get()});
  for (const base::Finding& finding : rules::check(*document, {}, fiche::empty_library(), &checks)) {
    if (finding.rule != "house-test") continue;
    REQUIRE(finding.related.size() == 1);
    CHECK(finding.related.front().message == "beside this");
    REQUIRE(finding.edits.size() == 1);
    CHECK(finding.edits.front().text == "x&quot;y");
    CHECK(document->source().slice(finding.edits.front().where) == "milk-whole");
    CHECK(finding.source == "plugin trial 3");
    return;
  }
  FAIL("no finding");
}

TEST_CASE("a manifest that is wrong is refused with its place and the nearest right word") {
  const std::pair<std::string, const char*> rows[] = {
      {"<manifest xmlns=\"urn:tamis:fiche:1\" id=\"a\" version=\"1\" api=\"2\"><adds id=\"b\" kind=\"check\"/></manifest>",
       "plugin.xml:1:61: the plugin needs version 2 of the interface; this is 1"},
      {"<manifest xmlns=\"urn:tamis:fiche:1\" id=\"a\" version=\"1\" api=\"1\"/>", "the manifest adds nothing"},
      {"<manifest xmlns=\"urn:tamis:fiche:1\" id=\"a\" version=\"1\" api=\"1\"><ads id=\"b\" kind=\"check\"/></manifest>",
       "adds"},
      {"<fiche xmlns=\"urn:tamis:fiche:1\" id=\"a\"/>", "this is no plugin's manifest"},
      {"<manifest", "plugin.xml:1:"},
      {"<manifest xmlns=\"urn:tamis:fiche:1\" id=\"a\" version=\"1\" api=\"1\"><adds id=\"b\" kind=\"chek\"/></manifest>",
       "check"},
      {"<manifest xmlns=\"urn:tamis:fiche:1\" id=\"a\" version=\"1\" api=\"1\"><adds id=\"empty-step\" kind=\"check\"/></manifest>",
       "\"empty-step\" is a rule of the check itself"},
      {"<manifest xmlns=\"urn:tamis:fiche:1\" id=\"a\" version=\"1\" api=\"1\" memory=\"1\"><adds id=\"b\" kind=\"check\"/></manifest>",
       "asks for 1 kilobytes"},
      {manifest_of("check", "<takes name=\"n\" kind=\"number\" default=\"many\">n</takes>"), "is \"many\", not a number"},
      {manifest_of("check", "<takes name=\"n\" kind=\"choice\">n</takes>"), "is a choice of nothing"},
      {manifest_of("check", "<adds id=\"house-test\" kind=\"export\"/>"), "is added twice"},
      {manifest_of("check", "<adds id=\"b\" kind=\"check\"><wrong>x</wrong></adds>"), "\"b\" has one example"},
      {manifest_of("check", "<adds id=\"b\" kind=\"export\"><wrong>x</wrong><right>y</right></adds>"), "\"b\" is no check"},
      {manifest_of("check", "<takes name=\"most\" kind=\"number\">n</takes><adds id=\"b\" kind=\"check\"><setting name=\"mots\">1</setting>"
                            "<wrong>x</wrong><right>y</right></adds>"), "write most"},
  };
  for (const auto& [manifest, expected] : rows) {
    CAPTURE(manifest);
    const tests::Loaded loaded = load_plugin(manifest, "function house_test() end");
    CHECK(loaded.plugin == nullptr);
    CAPTURE(loaded.lines());
    CHECK(loaded.lines().find(expected) != std::string::npos);
  }
}

TEST_CASE("a function that is not there is said with the nearest that is") {
  const tests::Loaded loaded = load_plugin(manifest_of("check"), "function house_tset(fiche) end");
  CHECK(loaded.lines() ==
        "plugin.xml:1:78: plugin.lua has no function \"house_test\" for house-test [did you mean \"house_tset\"?]\n");
}

TEST_CASE("a fault of the program is placed at its line") {
  const tests::Loaded loaded = load_plugin(manifest_of("check"), "local a = 1\n  local = 2\n");
  CHECK(loaded.lines() == "plugin.lua:2:3: <name> expected near '=' [mend the plugin, or take it out of kitchen.xml until it "
                          "is mended]\n");
}

TEST_CASE("settings arrive as their kind says") {
  const std::string manifest = manifest_of(
      "check", "<takes name=\"t-x\" kind=\"text\" default=\"a b\">t</takes><takes name=\"n\" kind=\"number\">n</takes>"
               "<takes name=\"y\" kind=\"yes\" default=\"no\">y</takes><takes name=\"w\" kind=\"words\" default=\"a b\">w</takes>"
               "<takes name=\"l\" kind=\"list\" default=\"a b; c\">l</takes>"
               "<takes name=\"c\" kind=\"choice\" choices=\"one|two\" default=\"two\">c</takes>");
  const std::string program =
      "function house_test(fiche) local s = tamis.settings fiche:say(nil, s.t_x .. '|' .. tostring(s.n) .. '|' .. "
      "tostring(s.y) .. '|' .. #s.w .. '|' .. s.l[2] .. '|' .. s.c) end";
  CHECK(said(*load_plugin(manifest, program).plugin, custard) == "2:3 house-test: a b|nil|false|2|c|two\n");
  CHECK(said(*load_plugin(manifest, program, "n=1.5|y=yes|c=one").plugin, custard) ==
        "2:3 house-test: a b|1.5|true|2|c|one\n");
  CHECK(load_plugin(manifest, program, "c=tow").lines() == "plugin.xml:1:1: the setting \"c\" cannot be \"tow\" [write two]\n");
  CHECK(load_plugin(manifest, program, "tx=1").lines() == "plugin.xml:1:1: the plugin trial has no setting \"tx\" [it takes t-x, n, y, w, l or c]\n");
}

TEST_CASE("a conversion changes a copy, and one that breaks the fiche is kept from everyone") {
  const auto convert = [](const std::string& body) {
    const tests::Loaded loaded = load_plugin(manifest_of("conversion"), "function turn(fiche)\n" + body + "\nend");
    if (loaded.plugin == nullptr) return loaded.lines();
    const auto document = tests::document_of(custard);
    const lua::PluginConverted made = loaded.plugin->convert(loaded.plugin->manifest().additions.front(), *document, {},
                                                             fiche::empty_library());
    CHECK(format::write(*document) == custard);
    std::string out = made.done ? format::write(made.document) : "refused";
    for (const base::Finding& finding : made.findings) out += "\n" + finding.message;
    return out;
  };
  CHECK(convert("") == custard);
  std::string expected = custard;
  expected.replace(expected.find("300 g"), 5, "600 g");
  CHECK(convert("local m = fiche:find('milk') m:set_text((m.amount * 2):written('en'):gsub('\u00A0', ' ') .. '')") == expected);
  CHECK(convert("local s = fiche:steps()[2] s:add('note'):set_text('x')").find("<note>x</note>") != std::string::npos);
  CHECK(convert("fiche:find('milk'):set('food', nil)").find("food=\"milk-whole\"") == std::string::npos);
  CHECK(convert("for _, t in ipairs(fiche:steps()[2]:texts()) do local a, b = t.text:find('Chill') if a then "
                "t:replace(a, b, 'Cool') end end")
            .find("Cool the <use") != std::string::npos);
  const std::string broken = convert("fiche:find('milk'):set('id', nil)");
  CHECK(broken.starts_with("refused\nplugin trial, turn: what it made cannot be used, line "));
  CHECK(convert("fiche.root:child('title'):remove()").starts_with("refused"));
  CHECK(convert("fiche:find('milk'):set('fod', 'x')").find("has no attribute \"fod\"; the nearest is \"food\"") != std::string::npos);
  CHECK(convert("fiche.root:add('stepp')").starts_with("refused"));
  CHECK(convert("local e = fiche:find('milk') e:remove() e:remove()").find("removed before") != std::string::npos);
  CHECK(convert("fiche:find('milk'):set_text('\\0')").find("control character") != std::string::npos);
  CHECK(convert("fiche:find('milk'):set_text('\\xff')").find("not valid UTF-8") != std::string::npos);
}

TEST_CASE("an export hands back bytes or named files, and nothing else") {
  const auto exported = [](const std::string& body) {
    const tests::Loaded loaded = load_plugin(manifest_of("export"), "function paper(fiche)\n" + body + "\nend");
    if (loaded.plugin == nullptr) return loaded.lines();
    const lua::Exported made = loaded.plugin->export_fiche(loaded.plugin->manifest().additions.front(),
                                                           tests::document_of(custard), {}, fiche::empty_library());
    std::string out;
    for (const lua::MadeFile& file : made.files) out += file.name + "=" + file.bytes + ";";
    for (const base::Finding& finding : made.findings) out += finding.message;
    return out;
  };
  CHECK(exported("return fiche.title") == "custard.txt=Vanilla custard;");
  CHECK(exported("return {{name = 'a.html', bytes = 'x'}, {name = 'b ü.css', bytes = 'y\\0'}}") ==
        std::string("a.html=x;b ü.css=y\0;", 21));
  for (const char* name : {"../a", "/a", "a/b", ".a", "a\\\\b", "", "a\\n", "a:b", "a."}) {
    CAPTURE(name);
    CHECK(exported("return {{name = '" + std::string(name) + "', bytes = ''}}").find("no plain file name") != std::string::npos);
  }
  CHECK(exported("return 3").find("gave a number") != std::string::npos);
  CHECK(exported("").find("gave a nil") != std::string::npos);
  CHECK(exported("fiche:say(nil, 'no yolk')") == "no yolk");
  CHECK(exported("return {}").find("empty list") != std::string::npos);
  CHECK(exported("return {{name = 'a', bytes = 1}}").find("no bytes") != std::string::npos);
  CHECK(exported("return {{name = 'a', bytes = ''}, {name = 'a', bytes = ''}}").find("two files named") != std::string::npos);
  CHECK(exported("return setmetatable({}, {__len = function() return 1 end, __index = function() error('asked') end})")
            .find("empty list") != std::string::npos);
}

TEST_CASE("an export over all is called once with the list of fiches, and may say something of each") {
  const std::string manifest = R"(<manifest xmlns="urn:tamis:fiche:1" id="trial" version="3" api="1"><adds id="menu" kind="export" over="all" ending="csv"/></manifest>)";
  const tests::Loaded loaded = load_plugin(manifest, R"(
function menu(fiches)
  local ids = {}
  for i, fiche in ipairs(fiches) do
    ids[i] = fiche.id
    fiche:say(fiche:steps()[1], "the first of " .. fiche.id)
  end
  return table.concat(ids, " ")
end)");
  REQUIRE(loaded.lines() == "");
  std::string other = custard;
  other.replace(other.find("id=\"custard\""), 12, "id=\"second\"");
  const lua::Addition& menu = loaded.plugin->manifest().additions.front();
  const lua::ExportedAll made = loaded.plugin->export_all(
      menu, {tests::document_of(custard), tests::document_of(other, "b.fiche.xml")}, {}, fiche::empty_library());
  REQUIRE(made.files.size() == 1);
  CHECK(made.files.front().name == "menu.csv");
  CHECK(made.files.front().bytes == "custard second");
  REQUIRE(made.findings.size() == 2);
  CHECK(made.findings[0].front().message == "the first of custard");
  CHECK(made.findings[1].front().message == "the first of second");
  CHECK(load_plugin(R"(<manifest xmlns="urn:tamis:fiche:1" id="trial" version="3" api="1"><adds id="a-b" kind="check" over="all"/></manifest>)", "function a_b() end")
            .lines() == "plugin.xml:1:78: \"a-b\" is no export: a check or conversion is of one fiche [take over=\"all\" out]\n");
}

TEST_CASE("pairs goes in order, sort keeps equal things in theirs") {
  CHECK(told("(function() local s = '' for k in pairs({b = 1, a = 2, [3] = 1, [1.5] = 1, [true] = 1, [-1] = 1}) do s = s .. "
             "tostring(k) .. ' ' end return s end)()") == "-1 1.5 3 a b true");
  CHECK(told("(function() local t = {} for i = 1, 200 do t[i] = {i % 3, i} end table.sort(t, function(a, b) return a[1] < "
             "b[1] end) for i = 2, 200 do if t[i][1] == t[i - 1][1] and t[i][2] < t[i - 1][2] then return 'no' end end return "
             "'stable' end)()") == "stable");
  CHECK(told("tostring({}) .. tostring(print) .. tostring(fiche.root)") == "tablefunction<fiche>");
}
