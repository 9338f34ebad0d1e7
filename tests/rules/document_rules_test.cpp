#include <catch2/catch.hpp>

#include "tests/rules/checking.h"

using namespace tamis;
using tests::check_part;
using tests::check_text;

TEST_CASE("faults of the document are said once, at their place") {
  struct Row {
    const char* part;
    const char* expected;
  };
  const Row row = GENERATE(values<Row>({
      {R"(<ingrediant food="salt">3 g</ingrediant>)", "4:2 unknown-element: there is no element <ingrediant>\n"},
      // What stands in an unknown element is read, but where it stands is not judged.
      {R"(<blob><ingredient food="salt">3 gx</ingredient></blob>)",
       "4:2 unknown-element: there is no element <blob>\n4:33 unknown-unit: \"gx\" is no unit of mass, volume, length or count\n"},
      {R"(<step>Rest <ingredient food="salt">3 g</ingredient>.</step>)",
       "4:12 misplaced-element: <ingredient> may not stand in <step>\n"},
      {R"(<ingredient food="salt" peices="5">3 g</ingredient>)",
       "4:25 unknown-attribute: <ingredient> has no attribute \"peices\"\n"},
      {R"(<ingredient food="salt" optional="maybe">3 g</ingredient>)", "4:35 bad-value: optional cannot be \"maybe\"\n"},
      {R"(<ingredient food="Sea Salt">3 g</ingredient>)", "4:19 bad-value: \"Sea Salt\" is not a food's id\n"},
      {R"(<ingredient food="">3 g</ingredient>)", "4:13 bad-value: food is empty\n"},
      {R"(<step/>)", "4:1 empty-step: the step says nothing\n"},
      {R"(<step><why>It sets.</why></step>)", ""},
      {R"(<choice/>)", "4:1 missing-element: <choice> offers nothing to choose from\n"},
      {R"(beat well)", "4:1 stray-text: the words \"beat well\" stand loose in <component>\n"},
      {R"(<ingredient id="a" food="salt">3 g</ingredient><step makes="a">Mix.</step>)",
       "4:61 duplicate-id: the name \"a\" is already given\n"},
      {R"(<step><use of="milk">milk</use></step>)", "4:16 dangling-reference: nothing in this file is called \"milk\"\n"},
      {R"(<step after="one two" id="three">Mix.</step><step id="one">Sift.</step>)",
       "4:18 dangling-reference: nothing in this file is called \"two\"\n"},
      {R"(<ingredient id="a" food="salt">3 g<amount batch="a">4 g</amount></ingredient>)",
       "4:50 dangling-reference: batch names \"a\", which is no <yield>\n"},
      {R"(<ingredient food="mlik-whole">3 g</ingredient>)", "4:19 unknown-food: no food is called \"mlik-whole\"\n"},
  }));
  CAPTURE(row.part);
  CHECK(check_part(row.part).lines() == row.expected);
}

TEST_CASE("one wrong name is one fault, whatever depends on it") {
  CHECK(check_part(R"(<ingrediant id="milk" food="milk-whole">3 g</ingrediant><step><use of="milk">m</use></step>)").rules() ==
        "unknown-element");
  CHECK(check_part(R"(<step maeks="base">Mix.</step><step><use of="base">m</use></step>)").rules() == "unknown-attribute");
  CHECK(check_text(R"(<fiche xmlns="urn:tamis:fiche:1" id="a"><titel>T</titel></fiche>)").rules() == "unknown-element");
  CHECK(check_text(R"(<fiche xmlns="urn:tamis:fiche:1" id="a"><title>T</title><component id="c" titel="C"/></fiche>)")
            .rules() == "unknown-attribute");
  CHECK(check_text(R"(<fiche xmlns="urn:tamis:fiche:1" id="a"><title>T</title><component id="c" title=""/></fiche>)")
            .rules() == "empty-title");
}

TEST_CASE("a second name points at the first") {
  const tests::Checked checked = check_part(R"(<ingredient id="a" food="salt">3 g</ingredient>
<ingredient id="a" food="salt">4 g</ingredient>)");
  REQUIRE(checked.rules() == "duplicate-id");
  REQUIRE(checked.findings[0].related.size() == 1);
  CHECK(checked.source->place(checked.findings[0].related[0].where.begin) == base::Place{4, 17});
  CHECK(checked.source->place(checked.findings[0].where.begin) == base::Place{5, 17});
}

TEST_CASE("a mistyped element is put right at both its tags") {
  const tests::Checked checked = check_part(R"(<ingrediant food="salt">3 g</ingrediant>)");
  REQUIRE(checked.findings.size() == 1);
  CHECK(tests::mended(checked).find("<ingredient food=\"salt\">3 g</ingredient>") != std::string::npos);
}

TEST_CASE("a fiche has one title, and it comes first") {
  const std::string head = R"(<fiche xmlns="urn:tamis:fiche:1" id="a">)";
  CHECK(check_text(head + "<title>T</title><title>U</title></fiche>").lines() ==
        "1:57 misplaced-element: the fiche has a second <title>\n");
  CHECK(check_text(head + "<note>N</note><title>T</title></fiche>").lines() ==
        "1:55 misplaced-element: <title> comes after <note>\n");
}

TEST_CASE("language tags are held to RFC 5646") {
  struct Row {
    const char* tag;
    bool good;
    const char* meant;
  };
  const Row row = GENERATE(values<Row>({
      {"en", true, ""},          {"en-GB", true, ""},        {"fr-CH", true, ""},     {"de-1996", true, ""},
      {"zh-Hant-TW", true, ""},  {"sl-rozaj-biske", true, ""}, {"es-419", true, ""},  {"x-house", true, ""},
      {"i-klingon", true, ""},   {"en-u-co-phonebk", true, ""}, {"de-CH-x-phonebk", true, ""}, {"zh-cmn-Hans-CN", true, ""},
      {"fr_FR", false, "fr-FR"}, {"english", false, "en"},   {"Deutsch", false, "de"}, {"frensh", false, "fr"},
      {"en-", false, ""},        {"e", false, ""},           {"en-u", false, ""},      {"x-", false, ""},
      {"en-abcdefghi", false, ""}, {"français", false, "fr"},
  }));
  CAPTURE(row.tag);
  const tests::Checked checked =
      check_text("<fiche xmlns=\"urn:tamis:fiche:1\" id=\"a\" lang=\"" + std::string(row.tag) + "\"><title>T</title></fiche>");
  CHECK(checked.rules() == (row.good ? "" : "bad-language-tag"));
  if (!row.good && row.meant[0] != 0) {
    CHECK(checked.findings.at(0).advice == "write \"" + std::string(row.meant) + "\"");
  }
}

TEST_CASE("references to other files are followed to the component") {
  tests::TextLibrary library;
  library.texts["base.fiche.xml"] = R"(<fiche xmlns="urn:tamis:fiche:1" id="base"><title>B</title>
<component id="custard" title="Custard"><ingredient id="milk" food="milk-whole">1 l</ingredient></component></fiche>)";
  library.texts["broken.fiche.xml"] = "<fiche";
  const auto lines = [&](const std::string& component) {
    return check_text("<fiche xmlns=\"urn:tamis:fiche:1\" id=\"a\"><title>T</title>\n" + component + "</fiche>", {}, library)
        .lines();
  };
  CHECK(lines(R"(<component id="c" title="C" from="base.fiche.xml#custard"/>)") == "");
  CHECK(lines(R"(<component id="c" title="C" from="base.fiche.xml"/>)") == "");
  CHECK(lines(R"(<component id="c" title="C" from="base.fiche.xml#custerd"/>)") ==
        "2:35 dangling-reference: \"base.fiche.xml\" has no component \"custerd\"\n");
  CHECK(lines(R"(<component id="c" title="C" from="bass.fiche.xml"/>)") ==
        "2:35 dangling-reference: there is no file \"bass.fiche.xml\"\n");
  CHECK(lines(R"(<component id="c" title="C" from="../../x.fiche.xml"/>)") ==
        "2:35 escaping-reference: \"../../x.fiche.xml\" leads out of the library's folder\n");
  CHECK(lines(R"(<component id="c" title="C" from="base.fiche.xml#custard"><override ingredient="milk">2 l</override></component>)") ==
        "");
  CHECK(lines(R"(<component id="c" title="C" from="base.fiche.xml#custard"><override ingredient="mlk">2 l</override></component>)") ==
        "2:81 dangling-reference: the other file has no ingredient \"mlk\"\n");
  CHECK(lines(R"(<component id="c" title="C" from="broken.fiche.xml"/>)").find("cannot be read") != std::string::npos);
}

TEST_CASE("a component made of itself is found through other files, and the chain is named") {
  tests::TextLibrary library;
  const auto fiche = [](const std::string& id, const std::string& from) {
    return "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"" + id + "\"><title>T</title><component id=\"" + id +
           "\" title=\"C\"><ingredient from=\"" + from + "\">1 kg</ingredient></component></fiche>";
  };
  library.texts["a.fiche.xml"] = fiche("a", "b.fiche.xml#b");
  library.texts["b.fiche.xml"] = fiche("b", "c.fiche.xml");
  library.texts["c.fiche.xml"] = fiche("c", "a.fiche.xml#a");
  CHECK(check_text(library.texts["a.fiche.xml"], {}, library, "a.fiche.xml").lines() ==
        "1:103 reference-cycle: this component is made of itself: a.fiche.xml#a → b.fiche.xml#b → c.fiche.xml#c → "
        "a.fiche.xml#a\n");
  // A cycle among others is theirs to say.
  CHECK(check_text(fiche("d", "a.fiche.xml#a"), {}, library, "d.fiche.xml").lines() == "");
  // Two files that lend each other different components are no cycle.
  library.texts["e.fiche.xml"] = R"(<fiche xmlns="urn:tamis:fiche:1" id="e"><title>T</title>
<component id="x" title="X"><ingredient from="f.fiche.xml#y">1 kg</ingredient></component>
<component id="z" title="Z"><ingredient food="salt">1 g</ingredient></component></fiche>)";
  library.texts["f.fiche.xml"] = R"(<fiche xmlns="urn:tamis:fiche:1" id="f"><title>T</title>
<component id="y" title="Y"><ingredient from="e.fiche.xml#z">1 kg</ingredient></component></fiche>)";
  CHECK(check_text(library.texts["e.fiche.xml"], {}, library, "e.fiche.xml").lines() == "");
}

TEST_CASE("a kitchen file is checked too") {
  const auto lines = [](const std::string& inner) {
    return check_text("<kitchen xmlns=\"urn:tamis:fiche:1\" name=\"K\">\n" + inner + "</kitchen>", {}, fiche::empty_library(),
                      "kitchen.xml").lines();
  };
  CHECK(lines(R"(<person id="a" from="7:30"/>)") == "2:22 bad-value: \"7:30\" is not a time of day\n");
  CHECK(lines(R"(<rule id="unknown-fod" severity="off"/>)") == "2:11 unknown-rule: there is no rule \"unknown-fod\"\n");
  CHECK(lines(R"(<food id="a" contains="milk eg"/>)") == "2:29 unknown-allergen: \"eg\" is none of the named allergens\n");
  CHECK(lines(R"(<oven id="a" most="2500 °C"/>)") ==
        "2:20 unbelievable-figure: 2500 °C is beyond belief for an oven's highest setting: at most 600 °C\n");
  CHECK(lines(R"(<food id="a" price="1.10 EUR" specified="2026-02-30" pack="1 kg"/>)") ==
        "2:42 bad-value: \"2026-02-30\" is not a date\n");
}
