#include <catch2/catch.hpp>

#include "tests/cli/process.h"

using tamis::tests::Ran;
using tamis::tests::run_tamis;
using tamis::tests::TemporaryFolder;

namespace {

constexpr const char* fiche = R"(<fiche xmlns="urn:tamis:fiche:1" id="slice" lang="en">
  <title>Walnut slice</title>
</fiche>
)";

/// A kitchen with one plugin that adds one of each kind, and a fiche in it.
class House {
 public:
  House() {
    kitchen("");
    folder.write("own/plugin.xml", R"(<manifest xmlns="urn:tamis:fiche:1" id="own" version="2" api="1">
  <summary>All kinds</summary>
  <adds id="own-check" kind="check" severity="error"><summary>what the house says</summary><note>Why it says so.</note></adds>
  <adds id="loud" kind="conversion"/>
  <adds id="paper" kind="export" ending="txt"/>
  <adds id="two-papers" kind="export"/>
  <adds id="menu" kind="export" over="all"/>
  <takes name="word" kind="text" default="no">what is said</takes>
</manifest>
)");
    folder.write("own/plugin.lua", R"(
function own_check(fiche) fiche:say(nil, said(), "say less") end
function loud(fiche) fiche.root:child("title"):set_text(tamis.upper(fiche.title)) end
function paper(fiche) return fiche.title .. ": " .. tamis.settings.word .. "\n" end
function menu(fiches)
  if #fiches > 2 then
    fiches[3]:say(nil, "two dishes are enough")
    return nil
  end
  local titles = {}
  for i, fiche in ipairs(fiches) do titles[i] = fiche.title end
  return table.concat(titles, ", ") .. "\n"
end
function two_papers(fiche) return {{name = "a.txt", bytes = "a"}, {name = "b.txt", bytes = "b"}} end
)");
    folder.write("own/helper.lua", "function said() return tamis.settings.word end\n");
    folder.write("a.fiche.xml", fiche);
  }

  void kitchen(const std::string& setting, const std::string& more = {}) const {
    folder.write("kitchen.xml", "<kitchen xmlns=\"urn:tamis:fiche:1\" name=\"Ferry Steps\">\n  <plugin id=\"own\" path=\"own\">" +
                                    setting + "</plugin>" + more + "\n</kitchen>\n");
  }

  [[nodiscard]] Ran run(const std::vector<std::string>& words) const { return run_tamis(words, {}, folder.path()); }

  TemporaryFolder folder;
};

}  // namespace

TEST_CASE("a check hears the plugins that the kitchen names, in one process and in two", "[cli]") {
  const House house;
  const Ran one = house.run({"check", "."});
  CHECK(one.exit == 1);
  CHECK(one.out.find("a.fiche.xml:2:3: error: no [own-check]") != std::string::npos);
  CHECK(one.out.find("→ say less") != std::string::npos);
  const Ran two = house.run({"check", "--jobs", "2", "."});
  CHECK(two.exit == one.exit);
  CHECK(two.out == one.out);
  house.kitchen("<setting name=\"word\">yes</setting>", "<rule id=\"own-check\" severity=\"off\"/>");
  CHECK(house.run({"check", "a.fiche.xml"}).exit == 0);
}

TEST_CASE("a plugin that cannot be loaded is told with its file and place, and the check fails", "[cli]") {
  const House house;
  house.kitchen("<setting name=\"wrod\">yes</setting>");
  Ran ran = house.run({"check", "a.fiche.xml"});
  CHECK(ran.exit == 2);
  CHECK(ran.err.find("kitchen.xml: a plugin cannot be loaded: line 2, column 31: the plugin own has no setting \"wrod\"; write "
                     "word\n") != std::string::npos);
  house.kitchen("");
  house.folder.write("own/plugin.lua", "x = 1\nfunction own_chekc(\n");
  ran = house.run({"check", "a.fiche.xml"});
  CHECK(ran.exit == 2);
  CHECK(ran.err.find("own/plugin.lua: a plugin cannot be loaded: line 2, column 1: ") != std::string::npos);
  house.folder.write("kitchen.xml", "<kitchen xmlns=\"urn:tamis:fiche:1\" name=\"F\"><plugin id=\"house-stile\"/></kitchen>");
  ran = house.run({"check", "a.fiche.xml"});
  CHECK(ran.exit == 2);
  CHECK(ran.err.find("there is no plugin \"house-stile\" in the box; write house-style") != std::string::npos);
}

TEST_CASE("a plugin that fails at work is an error finding, the others' findings stand", "[cli]") {
  const House house;
  house.folder.write("own/helper.lua", "function said() return nothing.here end\n");
  const Ran ran = house.run({"check", "a.fiche.xml"});
  CHECK(ran.exit == 1);
  CHECK(ran.out.find("plugin own, own_check at helper.lua:1: there is no global \"nothing\" [plugin-error]") != std::string::npos);
}

TEST_CASE("an export goes to standard output, a file, or a folder, and over nothing unasked", "[cli]") {
  const House house;
  CHECK(house.run({"export", "--as", "paper", "a.fiche.xml"}).out == "Walnut slice: no\n");
  CHECK(house.run({"export", "--as", "paper", "--set", "word=yes", "a.fiche.xml"}).out == "Walnut slice: yes\n");
  Ran ran = house.run({"export", "--as", "paper", "--set", "wrod=yes", "a.fiche.xml"});
  CHECK(ran.exit == 2);
  CHECK(ran.err.find("has no setting \"wrod\"; write word") != std::string::npos);
  ran = house.run({"export", "--as", "papr", "a.fiche.xml"});
  CHECK(ran.exit == 2);
  CHECK(ran.err == "tamis: no plugin adds the export \"papr\"\n  → did you mean \"paper\"?\n");
  ran = house.run({"export", "a.fiche.xml"});
  CHECK(ran.exit == 2);
  CHECK(ran.err.find("there is paper, two-papers") != std::string::npos);
  CHECK(house.run({"export", "--as", "paper", "--write", "x.txt", "a.fiche.xml"}).exit == 0);
  CHECK(house.folder.read("x.txt") == "Walnut slice: no\n");
  CHECK(house.run({"export", "--as", "two-papers", "a.fiche.xml"}).exit == 2);
  CHECK(house.run({"export", "--as", "two-papers", "--to", "out", "a.fiche.xml"}).exit == 0);
  CHECK(house.folder.read("out/b.txt") == "b");
  ran = house.run({"export", "--as", "two-papers", "--to", "out", "a.fiche.xml"});
  CHECK(ran.exit == 2);
  CHECK(ran.err == "tamis: out/a.txt: is there already; add --replace to write over it\n"
                   "tamis: out/b.txt: is there already; add --replace to write over it\n");
  CHECK(house.run({"export", "--as", "two-papers", "--replace", "--to", "out", "a.fiche.xml"}).exit == 0);
  CHECK(house.run({"export", "--as", "paper", "--to", "all", "."}).exit == 0);
  CHECK(house.folder.read("all/slice.txt") == "Walnut slice: no\n");
}

TEST_CASE("an export over all is made once of every fiche named", "[cli]") {
  const House house;
  house.folder.write("b.fiche.xml", R"(<fiche xmlns="urn:tamis:fiche:1" id="b" lang="en"><title>Pear slice</title></fiche>)");
  Ran ran = house.run({"export", "--as", "menu", "a.fiche.xml", "b.fiche.xml"});
  CHECK(ran.exit == 0);
  CHECK(ran.out == "Walnut slice, Pear slice\n");
  CHECK(house.run({"export", "--as", "menu", "--to", "out", "."}).exit == 0);
  CHECK(house.folder.read("out/menu.txt") == "Walnut slice, Pear slice\n");
  ran = house.run({"export", "--as", "paper", "a.fiche.xml", "b.fiche.xml"});
  CHECK(ran.exit == 2);
  CHECK(ran.out == "");
  CHECK(ran.err == "tamis: a.fiche.xml: is not the only fiche named: more than one makes more than one file; add --to FOLDER\n");
  ran = house.run({"export", "--as", "menu", "a.fiche.xml", "b.fiche.xml", "a.fiche.xml"});
  CHECK(ran.exit == 2);
  CHECK(ran.out == "");
  CHECK(ran.err.find("warning: two dishes are enough [menu]") != std::string::npos);
  CHECK(ran.err.find("gives no file; what is said above must be put right first") != std::string::npos);
  house.folder.write("other/kitchen.xml", R"(<kitchen xmlns="urn:tamis:fiche:1" name="Far Bank"><plugin id="own" path="../own"/></kitchen>)");
  house.folder.write("other/c.fiche.xml", R"(<fiche xmlns="urn:tamis:fiche:1" id="c" lang="en"><title>Tart</title></fiche>)");
  ran = house.run({"export", "--as", "menu", "a.fiche.xml", "other/c.fiche.xml"});
  CHECK(ran.exit == 2);
  CHECK(ran.err.find("other/c.fiche.xml: is of another kitchen than a.fiche.xml") != std::string::npos);
  house.folder.write("broken.fiche.xml", "<fiche");
  ran = house.run({"export", "--as", "menu", "a.fiche.xml", "broken.fiche.xml"});
  CHECK(ran.exit != 0);
  CHECK(ran.out == "");
}

TEST_CASE("a plugin's conversion is printed or written", "[cli]") {
  const House house;
  CHECK(house.run({"convert", "--with", "loud", "a.fiche.xml"}).out.find("<title>WALNUT SLICE</title>") != std::string::npos);
  CHECK(house.folder.read("a.fiche.xml") == fiche);
  CHECK(house.run({"convert", "--with", "loud", "--write", "a.fiche.xml"}).exit == 0);
  CHECK(house.folder.read("a.fiche.xml").find("<title>WALNUT SLICE</title>") != std::string::npos);
  CHECK(house.run({"convert", "--with", "luod", "a.fiche.xml"}).err ==
        "tamis: no plugin adds the conversion \"luod\"\n  → did you mean \"loud\"?\n");
  CHECK(house.run({"convert", "--with", "loud", "--units", "us", "a.fiche.xml"}).exit == 2);
}

TEST_CASE("plugins are listed with what they add, their settings and where these are from", "[cli]") {
  const House house;
  house.kitchen("<setting name=\"word\">  yes </setting>");
  const Ran listed = house.run({"plugins"});
  CHECK(listed.exit == 0);
  CHECK(listed.out.starts_with("own 2 (the kitchen's): own\n"
                               "  check own-check    what the house says (error)\n"
                               "  conversion loud    All kinds\n"
                               "  export paper       All kinds\n"
                               "  export two-papers  All kinds\n"
                               "  export menu        All kinds\n"
                               "  setting word       yes (kitchen.xml, line 2): what is said\n"
                               "  limits             20 million instructions a call, 32 MB of memory\n\n"));
  CHECK(listed.out.find("house-style 1 (in the box): ") != std::string::npos);
  CHECK(listed.out.find("  setting title-length     60 (by default): letters") != std::string::npos);
  CHECK(listed.out.find("  setting units            not set: ids") != std::string::npos);
}

TEST_CASE("a plugin's check is explained as a built-in rule is", "[cli]") {
  const House house;
  CHECK(house.run({"explain", "own-check"}).out ==
        "own-check (error)\n  what the house says\n\n  Why it says so.\n\n  source: plugin own 2, own\n");
  CHECK(house.run({"explain", "own-chekc"}).err.find("did you mean \"own-check\"?") != std::string::npos);
  const std::string told = house.run({"explain", "house-verb"}).out;
  CHECK(told.find("  in a kitchen whose file says\n      <plugin id=\"house-style\">\n"
                  "        <setting name=\"verbs\">beat bake fold</setting>\n      </plugin>\n\n"
                  "  wrong\n      <step>Incorporate the egg whites.</step>\n"
                  "    says: the step starts with \"Incorporate\", which is none of the house's verbs\n"
                  "        → start with what the cook does: beat, bake, fold\n\n"
                  "  right\n      <step>Fold in the egg whites.</step>\n\n  source: plugin house-style 1, ") != std::string::npos);
  const std::string json = house.run({"explain", "--report", "json", "house-verb", "empty-step"}).out;
  CHECK(json.find("\"id\": \"house-verb\"") != std::string::npos);
  CHECK(json.find("\"topic\": \"plugin house-style\"") != std::string::npos);
  CHECK(json.find("<step>Incorporate the egg whites.</step>\\n  </component>") != std::string::npos);
}

TEST_CASE("SARIF lists the checks of the kitchen's plugins among its rules", "[cli]") {
  const House house;
  const Ran ran = house.run({"check", "--report", "sarif", "a.fiche.xml"});
  const std::size_t rule = ran.out.find("{\"id\": \"own-check\", \"shortDescription\": {\"text\": \"what the house says\"}");
  CHECK(rule != std::string::npos);
  CHECK(ran.out.find("\"ruleId\": \"own-check\", \"ruleIndex\": ") != std::string::npos);
  CHECK(ran.out.find("\"id\": \"house-verb\"") == std::string::npos);
}

TEST_CASE("a plugin may give the kitchen foods, meanings and verbs, and need no program for it", "[cli]") {
  const House house;
  const std::string manifest = R"(<manifest xmlns="urn:tamis:fiche:1" id="larder" version="1" api="1">
  <summary>What this house buys and says.</summary>
  <food id="smoked-rye-flour" name="smoked rye flour" like="flour-rye" density="100 ml = 50 g"/>
  <verb word="buzz" like="puree"/>
</manifest>
)";
  house.folder.write("larder/plugin.xml", manifest);
  house.folder.write("kitchen.xml", "<kitchen xmlns=\"urn:tamis:fiche:1\" name=\"Ferry Steps\">\n"
                                    "  <plugin id=\"larder\" path=\"larder\"/>\n</kitchen>\n");
  house.folder.write("a.fiche.xml", R"(<fiche xmlns="urn:tamis:fiche:1" id="slice" lang="en" units="us">
  <title>Slice</title>
  <component id="c" title="Crumb">
    <ingredient id="rye" food="smoked-rye-flour">2 cups</ingredient>
    <ingredient id="water" food="water">1 lb</ingredient>
    <step do="buzz">Buzz the <use of="rye">flour</use> with the <use of="water">water</use>.</step>
  </component>
</fiche>
)");
  const Ran shown = house.run({"show", "a.fiche.xml"});
  CHECK(shown.exit == 0);
  CHECK(shown.out.find("237 g") != std::string::npos);
  CHECK(house.run({"check", "a.fiche.xml"}).out.find("buzz") == std::string::npos);
  CHECK(house.run({"check", "--stream"}).exit == 0);

  CHECK(house.run({"plugins"}).out.starts_with("larder 1 (the kitchen's): larder\n"
                                               "  food smoked-rye-flour  for the kitchen\n"
                                               "  verb buzz              for the kitchen\n\n"));
  CHECK(house.run({"plugins", "test", "larder"}).out == "larder 1: 0 tests, nothing to test\n");
  house.folder.write("larder/tests/slice/case.fiche.xml", house.folder.read("a.fiche.xml"));
  CHECK(house.run({"plugins", "test", "."}).out == "larder 1: 1 test, as expected\n"
                                                        "own: has no tests; each is a folder tests/NAME with a case.fiche.xml\n"
                                                        "own 2: 0 tests, nothing tested\n");
  house.folder.write("larder/tests/slice/case.fiche.xml", R"(<fiche xmlns="urn:tamis:fiche:1" id="s" lang="en"><title>S</title>
<component id="c" title="C"><step><use of="salt">Salt</use> it.</step></component></fiche>)");
  CHECK(house.run({"plugins", "test", "larder"}).exit == 1);
  house.folder.write("larder/tests/slice/case.fiche.xml", house.folder.read("a.fiche.xml"));

  std::string wrong = manifest;
  wrong.replace(wrong.find("puree"), 5, "pureee");
  house.folder.write("larder/plugin.xml", wrong);
  const Ran ran = house.run({"check", "a.fiche.xml"});
  CHECK(ran.exit == 2);
  CHECK(ran.err.find("larder/plugin.xml") != std::string::npos);
  CHECK(ran.err.find("the trade has no word \"pureee\"") != std::string::npos);

  house.folder.write("larder/plugin.xml", manifest);
  house.folder.write("other/plugin.xml", R"(<manifest xmlns="urn:tamis:fiche:1" id="other" version="1" api="1">
  <verb word="buzz" like="chop"/></manifest>)");
  house.folder.write("kitchen.xml", "<kitchen xmlns=\"urn:tamis:fiche:1\" name=\"Ferry Steps\">\n"
                                    "  <plugin id=\"larder\" path=\"larder\"/><plugin id=\"other\" path=\"other\"/>\n</kitchen>\n");
  CHECK(house.run({"check", "a.fiche.xml"}).err.find("the verb buzz is given by the plugins larder and other") !=
        std::string::npos);
}

TEST_CASE("a plugin can list the library and read what is in it", "[cli]") {
  const House house;
  house.folder.write("base/b.fiche.xml", "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"b\" lang=\"en\"><title>B</title></fiche>");
  house.folder.write("own/plugin.lua", R"(
function own_check(fiche) end
function loud(fiche) end
function two_papers(fiche) end
function menu(fiches) end
function paper(fiche)
  local out = {}
  for _, reference in ipairs(fiche:library()) do
    out[#out + 1] = reference .. ": " .. fiche:open(reference).title
  end
  return table.concat(out, "\n") .. "\n"
end
)");
  CHECK(house.run({"export", "--as", "paper", "a.fiche.xml"}).out == "a.fiche.xml: Walnut slice\nbase/b.fiche.xml: B\n");
  CHECK(house.run({"export", "--as", "paper", "base/b.fiche.xml"}).out == "../a.fiche.xml: Walnut slice\nb.fiche.xml: B\n");
}

TEST_CASE("a folder for exports is made with those above it; a conversion in place takes no name", "[cli]") {
  const House house;
  CHECK(house.run({"export", "--as", "paper", "--to", "made/today", "a.fiche.xml"}).exit == 0);
  CHECK(house.folder.read("made/today/slice.txt") == "Walnut slice: no\n");
  const Ran named = house.run({"convert", "--with", "loud", "--write", "b.fiche.xml", "a.fiche.xml"});
  CHECK(named.exit == 2);
  CHECK(named.err == "tamis: there is no b.fiche.xml; --write takes no name, it writes into the fiche itself: nothing was written\n");
  CHECK(house.folder.read("a.fiche.xml") == fiche);
}
