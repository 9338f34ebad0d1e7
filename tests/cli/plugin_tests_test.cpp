#include <catch2/catch.hpp>

#include "tests/cli/process.h"

// "tamis new plugin" and "tamis plugins test".

using tamis::tests::Ran;
using tamis::tests::run_tamis;
using tamis::tests::TemporaryFolder;

namespace {

Ran run(const TemporaryFolder& folder, const std::vector<std::string>& words) { return run_tamis(words, {}, folder.path()); }

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

}  // namespace

TEST_CASE("a new plugin passes its own tests, whatever it is to add", "[cli]") {
  for (const char* kinds : {"check", "conversion", "export", "check,conversion", "check,export", "conversion, export",
                            "export,conversion,check"}) {
    CAPTURE(kinds);
    const TemporaryFolder folder;
    REQUIRE(run(folder, {"new", "plugin", "poured", "--adds", kinds}).exit == 0);
    const Ran ran = run(folder, {"plugins", "test", "poured"});
    CHECK(ran.err == "");
    const bool check = has(kinds, "check");
    CHECK(ran.out == std::string("poured 1: 2 tests, ") + (check ? "1 pair of examples, " : "") + "as expected\n");
    CHECK(ran.exit == 0);
    CHECK(run(folder, {"check", "poured/tests"}).exit == 0);
  }
}

TEST_CASE("a new plugin is put where it is wanted, over nothing, and called what can be called", "[cli]") {
  const TemporaryFolder folder;
  const Ran made = run(folder, {"new", "plugin", "end", "--to", "house/plugins/end"});
  CHECK(made.exit == 0);
  CHECK(made.err == "wrote house/plugins/end: 7 files\n  \"tamis plugins test house/plugins/end\" runs its tests\n");
  CHECK(run(folder, {"plugins", "test", "house/plugins"}).out == "end 1: 2 tests, 1 pair of examples, as expected\n");
  Ran ran = run(folder, {"new", "plugin", "end", "--to", "house"});
  CHECK(ran.exit == 2);
  CHECK(ran.err == "tamis: house: is there already; nothing was written\n  → put it elsewhere with --to FOLDER\n");
  CHECK(run(folder, {"new", "plugin", "End"}).err ==
        "tamis: a plugin cannot be called \"End\"; it is small letters, digits and -\n");
  CHECK(run(folder, {"new", "plugin", "empty-step"}).err ==
        "tamis: \"empty-step\" is a rule of the check itself; take another name\n");
  CHECK(run(folder, {"new", "plugin", "a", "--adds", "chekc"}).err ==
        "tamis: a plugin cannot add a \"chekc\"\n  → did you mean \"check\"?\n");
}

TEST_CASE("a test of a plugin that is not as expected shows the lines that differ", "[cli]") {
  const TemporaryFolder folder;
  REQUIRE(run(folder, {"new", "plugin", "poured", "--adds", "check,export"}).exit == 0);
  folder.write("poured/tests/weighed/findings.txt", "5:5 error poured-check: no\n");
  Ran ran = run(folder, {"plugins", "test", "poured"});
  CHECK(ran.exit == 1);
  CHECK(ran.out == "poured/tests/weighed/findings.txt: is not what was made (- expected, + made)\n"
                   "    @@ -1 +1 @@\n    -5:5 error poured-check: no\n    +nothing\n"
                   "poured 1: 2 tests, 1 pair of examples, 1 not as expected\n");
  folder.write("poured/tests/weighed/findings.txt", "");
  CHECK(run(folder, {"plugins", "test", "poured"}).exit == 0);

  folder.write("poured/tests/weighed/exported/poured-export/card.txt", "more");
  folder.write("poured/tests/weighed/exported/poured-exprot/honey-milk.txt", "more");
  folder.write("poured/tests/weighed/kitchn.xml", "more");
  ran = run(folder, {"plugins", "test", "poured"});
  CHECK(ran.exit == 1);
  CHECK(has(ran.out, "poured/tests/weighed/exported/poured-exprot: the plugin adds no export \"poured-exprot\"; did you mean "
                     "\"poured-export\"?\n"));
  CHECK(has(ran.out, "poured/tests/weighed/kitchn.xml: is no part of a test; did you mean \"kitchen.xml\"?\n"));
}

TEST_CASE("what is missing or too many in a plugin's tests is said", "[cli]") {
  const TemporaryFolder folder;
  REQUIRE(run(folder, {"new", "plugin", "poured", "--adds", "check,conversion"}).exit == 0);
  const std::string recipe = folder.read("poured/tests/poured/case.fiche.xml");
  folder.write("poured/tests/new/case.fiche.xml", recipe);
  folder.write("poured/tests/slip/case.fiche.xml", 
               "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"a\" lang=\"en\"><titel>A</titel></fiche>");
  folder.write("poured/tests/slip/findings.txt", "nothing\n");
  const Ran ran = run(folder, {"plugins", "test", "poured"});
  CHECK(ran.exit == 1);
  CHECK(has(ran.out, "poured/tests/new: says nothing of what is expected; \"tamis plugins test --renew\" writes what the "
                     "plugin makes now\n"));
  CHECK(has(ran.out, "poured/tests/slip/case.fiche.xml:1:"));
  CHECK(has(ran.out, "[unknown-element]"));
  CHECK(has(ran.out, "poured 1: 4 tests, 1 pair of examples, 2 not as expected\n"));
}

TEST_CASE("something that no test of the plugin tries is said", "[cli]") {
  const TemporaryFolder folder;
  REQUIRE(run(folder, {"new", "plugin", "poured"}).exit == 0);
  std::string manifest = folder.read("poured/plugin.xml");
  manifest.insert(manifest.find("  <takes"), "  <adds id=\"page\" kind=\"export\"/>\n");
  folder.write("poured/plugin.xml", manifest);
  folder.write("poured/page.lua", "function page(fiche) return {{name = \"a.txt\", bytes = \"\\0\\xff\" .. fiche.path}} end\n");
  const Ran ran = run(folder, {"plugins", "test", "poured"});
  CHECK(ran.exit == 1);
  CHECK(ran.out == "poured/tests: none says what is expected of the export page, in exported/page/\n"
                   "poured 1: 2 tests, 1 pair of examples, as expected\n");
  folder.write("poured/tests/page/case.fiche.xml", folder.read("poured/tests/weighed/case.fiche.xml"));
  CHECK(run(folder, {"plugins", "test", "--renew", "poured"}).out ==
        "wrote poured/tests/page/exported/page/a.txt\nwrote poured/tests/page/findings.txt\npoured 1: 3 tests, 1 pair of examples, as expected\n");
  CHECK(folder.read("poured/tests/page/exported/page/a.txt") == std::string("\0\xff" "case.fiche.xml", 16));
  CHECK(run(folder, {"plugins", "test", "poured"}).exit == 0);
  folder.write("poured/page.lua", "function page(fiche) return {{name = \"b.txt\", bytes = \"\\0\\xff\"}} end\n");
  CHECK(run(folder, {"plugins", "test", "poured"}).exit == 1);
  CHECK(has(run(folder, {"plugins", "test", "--renew", "poured"}).out, "took away poured/tests/page/exported/page/a.txt\n"));
}

TEST_CASE("an example that its check does not find, or finds although it is right, is said with its place", "[cli]") {
  const TemporaryFolder folder;
  REQUIRE(run(folder, {"new", "plugin", "poured"}).exit == 0);
  const std::string manifest = folder.read("poured/plugin.xml");
  const auto with = [&](const std::string& from, const std::string& to) {
    std::string text = manifest;
    text.replace(text.find(from), from.size(), to);
    folder.write("poured/plugin.xml", text);
    const Ran ran = run(folder, {"plugins", "test", "poured"});
    CHECK(ran.exit == 1);
    return ran.out.substr(0, ran.out.find('\n'));
  };
  CHECK(with(">250 ml<", ">250 g<") == "poured/plugin.xml:4:13: the wrong example of poured: the check does not find it");
  CHECK(with(">258 g<", ">2 dl<") == "poured/plugin.xml:4:13: the right example of poured: 2\u00a0dl of whole milk is "
                                     "measured, not weighed; write 206\u00a0g [poured]");
  CHECK(with(">258 g</ingredient>", ">258 g</ingredint>").starts_with("poured/plugin.xml:4:13: the right example of poured"));
}

TEST_CASE("an export over all fiches is tested with those in together", "[cli]") {
  const TemporaryFolder folder;
  REQUIRE(run(folder, {"new", "plugin", "all", "--adds", "export"}).exit == 0);
  std::string manifest = folder.read("all/plugin.xml");
  manifest.insert(manifest.find(" ending="), " over=\"all\"");
  folder.write("all/plugin.xml", manifest);
  folder.write("all/plugin.lua", R"(function all(fiches)
  fiches[2]:say(nil, "too sweet")
  return #fiches .. " " .. fiches[2].path .. " " .. #fiches[1]:library() .. " " .. fiches[2]:open("../library/c.fiche.xml").title
end)");
  const std::string recipe = folder.read("all/tests/weighed/case.fiche.xml");
  folder.write("all/tests/weighed/together/b.fiche.xml", recipe);
  folder.write("all/tests/weighed/library/c.fiche.xml", recipe);
  REQUIRE(run(folder, {"plugins", "test", "--renew", "all"}).exit == 0);
  CHECK(folder.read("all/tests/weighed/exported/all/all.txt") == "2 together/b.fiche.xml 3 Honey milk");
  CHECK(folder.read("all/tests/weighed/exported/all.findings.txt") == "together/b.fiche.xml:3:3 warning all: too sweet\n");
  CHECK(folder.read("all/tests/poured/exported/all.findings.txt").find("plugin-error") != std::string::npos);
  CHECK(run(folder, {"plugins", "test", "all"}).exit == 0);
}

TEST_CASE("what is no plugin, or cannot be loaded, ends the test with its place", "[cli]") {
  const TemporaryFolder folder;
  REQUIRE(run(folder, {"new", "plugin", "poured"}).exit == 0);
  Ran ran = run(folder, {"plugins", "test", "pored"});
  CHECK(ran.exit == 2);
  CHECK(ran.err == "tamis: pored: there is no such folder\n");
  CHECK(run(folder, {"plugins", "test", "poured/tests"}).err ==
        "tamis: poured/tests: holds no plugin.xml, nor does a folder below it\n");
  CHECK(run(folder, {"plugins", "test"}).exit == 2);
  CHECK(run(folder, {"plugins", "--renew"}).exit == 2);
  folder.write("poured/plugin.lua", "function pored(fiche) end\n");
  ran = run(folder, {"plugins", "test", "poured"});
  CHECK(ran.exit == 2);
  CHECK(ran.err ==
        "tamis: poured/plugin.xml:4:13: plugin.lua has no function \"poured\" for poured; did you mean \"pored\"?\n");
}

TEST_CASE("a check of a kitchen passes by the tests of its plugins", "[cli]") {
  const TemporaryFolder folder;
  REQUIRE(run(folder, {"new", "plugin", "poured", "--to", "house/poured"}).exit == 0);
  folder.write("house/poured/tests/bad/case.fiche.xml", tamis::tests::bad_fiche);
  folder.write("kitchen.xml", 
               "<kitchen xmlns=\"urn:tamis:fiche:1\" name=\"F\"><plugin id=\"poured\" path=\"house/poured\"/></kitchen>");
  folder.write("a.fiche.xml", tamis::tests::good_fiche);
  CHECK(run(folder, {"check", "."}).exit == 0);
  CHECK(run(folder, {"check", "house/poured"}).exit == 1);
}
