#include "tests/change/converting.h"

using namespace tamis;
using namespace tamis::tests;

namespace {

struct Row {
  const char* own;       ///< what the author wrote in the component
  const char* declared;  ///< of the root
  System units;
  By by;
  const char* becomes;
};

void check_rows(std::span<const Row> rows) {
  for (const Row& row : rows) {
    CAPTURE(row.own, row.declared, row.becomes);
    const std::string own = fiche_around(row.own, row.declared);
    const Result made = converted(own, wish(row.units, row.by));
    CHECK(inside(made) == row.becomes);
    // Whatever was done is taken back on the way to where it came from.
    if (std::string_view(row.declared).empty()) continue;
    const System home = fiche::system_named(std::string_view(row.declared).substr(7, std::string_view(row.declared).size() - 8)).value();
    if (home != row.units) CHECK(converted(made.xml, wish(home)).xml == own);
  }
}

constexpr const char* metric = "units=\"metric\"";
constexpr const char* us = "units=\"us\"";
constexpr const char* imperial = "units=\"imperial\"";

}  // namespace

TEST_CASE("an amount is written in the wanted system, and the author's stays beside it") {
  const Row rows[] = {
      {"<ingredient>500 g</ingredient>", metric, System::us, By::as_written, "<ingredient was=\"500 g\">1 lb 1 ¾ oz</ingredient>"},
      {"<ingredient>8 oz</ingredient>", us, System::metric, By::as_written, "<ingredient was=\"8 oz\">227 g</ingredient>"},
      {"<ingredient>1 lb 2 oz</ingredient>", us, System::metric, By::as_written, "<ingredient was=\"1 lb 2 oz\">510 g</ingredient>"},
      {"<ingredient>1 cup</ingredient>", us, System::metric, By::as_written, "<ingredient was=\"1 cup\">240 ml</ingredient>"},
      {"<ingredient>80–90 g</ingredient>", metric, System::us, By::as_written, "<ingredient was=\"80–90 g\">2 ¾–3 ¼ oz</ingredient>"},
      {"<ingredient>1 pint</ingredient>", imperial, System::us, By::as_written, "<ingredient was=\"1 pint\">2 ⅓ cups 1 tbsp</ingredient>"},
      {"<ingredient>8 oz</ingredient>", us, System::imperial, By::as_written, "<ingredient>8 oz</ingredient>"},
  };
  check_rows(rows);
}

TEST_CASE("counts, words, pinches and shares stay") {
  for (const char* own : {"<ingredient>4</ingredient>", "<ingredient>to taste</ingredient>", "<ingredient>1 pinch</ingredient>",
                          "<ingredient>2 leaves</ingredient>", "<step><use of=\"x\" take=\"1/2\">a</use></step>",
                          "<step>For <time>20 min</time> at <room-temp>room temperature</room-temp>.</step>"}) {
    CAPTURE(own);
    for (const System units : {System::metric, System::us, System::imperial}) {
      CHECK(converted(fiche_around(own), wish(units)).xml == fiche_around(own));
    }
  }
}

TEST_CASE("figures in sentences, gates, uses, moulds and keeping are converted where they stand") {
  const Row rows[] = {
      {"<step>Cook to <food-temp>82–84 °C</food-temp> &amp; cool.</step>", metric, System::us, By::as_written,
       "<step>Cook to <food-temp was=\"82–84 °C\">180–183 °F</food-temp> &amp; cool.</step>"},
      {"<step><use of=\"x\" at=\"24–30 °C\">the custard</use></step>", metric, System::us, By::as_written,
       "<step><use of=\"x\" at=\"76–86 °F\" was-at=\"24–30 °C\">the custard</use></step>"},
      {"<keep at=\"at most 5 °C\">Cold.</keep>", metric, System::us, By::as_written,
       "<keep at=\"at most 41 °F\" was-at=\"at most 5 °C\">Cold.</keep>"},
      {"<step>Roll to <length>12 × 20 in</length>.</step>", us, System::metric, By::as_written,
       "<step>Roll to <length was=\"12 × 20 in\">30 × 51 cm</length>.</step>"},
      {"<yield mass=\"1 lb\"><mould length=\"10 in\"/><loss what=\"bowl\" amount=\"1 oz\"/></yield>", us, System::metric,
       By::as_written,
       "<yield mass=\"454 g\" was-mass=\"1 lb\"><mould length=\"25 cm\" was-length=\"10 in\"/><loss what=\"bowl\" "
       "amount=\"28 g\" was-amount=\"1 oz\"/></yield>"},
      {"<step>Cool.<control>Below <food-temp>8 °C</food-temp>.</control></step>", metric, System::us, By::as_written,
       "<step>Cool.<control>Below <food-temp was=\"8 °C\">46 °F</food-temp>.</control></step>"},
  };
  check_rows(rows);
}

TEST_CASE("the author's second figure, where it is the wanted one, becomes the text as it was written") {
  const Row rows[] = {
      {"<ingredient also=\"8 oz\">225 g</ingredient>", metric, System::us, By::as_written,
       "<ingredient also=\"225 g\" was=\"225 g\" was-also=\"8 oz\">8 oz</ingredient>"},
      {"<ingredient also=\"240 ml\">1 cup</ingredient>", us, System::metric, By::as_written,
       "<ingredient was-also=\"240 ml\" was=\"1 cup\">240 ml</ingredient>"},
      {"<ingredient also=\"120 g\">1 cup</ingredient>", us, System::metric, By::as_written,
       "<ingredient was-also=\"120 g\" was=\"1 cup\">120 g</ingredient>"},
      {"<step><oven-temp mode=\"fan\" also=\"350 °F\">180 °C</oven-temp></step>", metric, System::us, By::as_written,
       "<step><oven-temp mode=\"fan\" also=\"180 °C\" was=\"180 °C\" was-also=\"350 °F\">350 °F</oven-temp></step>"},
      {"<step><food-temp also=\"165 °F\">74 °C</food-temp></step>", metric, System::us, By::as_written,
       "<step><food-temp also=\"74 °C\" was=\"74 °C\" was-also=\"165 °F\">165 °F</food-temp></step>"},
      {"<ingredient also=\"8 oz\">225 g</ingredient>", metric, System::metric, By::as_written,
       "<ingredient also=\"8 oz\">225 g</ingredient>"},
  };
  check_rows(rows);
}

TEST_CASE("mass and volume change places by the food's density") {
  const Row rows[] = {
      {"<ingredient food=\"flour-wheat-white\">1 cup</ingredient>", us, System::metric, By::mass,
       "<ingredient food=\"flour-wheat-white\" was=\"1 cup\">125 g</ingredient>"},
      {"<ingredient food=\"flour-wheat-white\">125 g</ingredient>", metric, System::us, By::volume,
       "<ingredient food=\"flour-wheat-white\" was=\"125 g\">1 cup</ingredient>"},
      {"<ingredient food=\"milk-whole\">244 g</ingredient>", metric, System::us, By::volume,
       "<ingredient food=\"milk-whole\" was=\"244 g\">1 cup</ingredient>"},
      {"<ingredient id=\"f\" food=\"sugar-white\">1 kg</ingredient><step><use of=\"f\" take=\"200 g\">sugar</use> and "
       "<use of=\"f\"><amount>100 g</amount> of it</use></step>",
       metric, System::us, By::volume,
       "<ingredient id=\"f\" food=\"sugar-white\" was=\"1 kg\">1 qt 1 cup</ingredient><step><use of=\"f\" take=\"1 cup\" "
       "was-take=\"200 g\">sugar</use> and <use of=\"f\"><amount was=\"100 g\">½ cup</amount> of it</use></step>"},
  };
  check_rows(rows);
}

TEST_CASE("by both, the second kind stands in also") {
  const std::string flour = fiche_around("<ingredient food=\"flour-wheat-white\">125 g</ingredient>", metric);
  const Result made = converted(flour, wish(System::us, By::both));
  CHECK(inside(made) == "<ingredient food=\"flour-wheat-white\" was=\"125 g\" also=\"1 cup\">4 ⅜ oz</ingredient>");
  CHECK(converted(made.xml, wish(System::metric)).xml == flour);

  const std::string milk = fiche_around("<ingredient food=\"water\">250 g</ingredient>", metric);
  const Result poured = converted(milk, wish(System::metric, By::both));
  CHECK(inside(poured) == "<ingredient food=\"water\" was=\"250 g\" also=\"250 g\">250 ml</ingredient>");
  CHECK(converted(poured.xml, wish(System::metric)).xml == milk);
}

TEST_CASE("a pinch gets no second figure") {
  const std::string own = fiche_around("<ingredient food=\"salt\">1 pinch</ingredient>", metric);
  for (const By by : {By::mass, By::volume, By::both}) CHECK(converted(own, wish(System::us, by)).xml == own);
}

TEST_CASE("what has no density stays as it is measured, and a finding says so once") {
  const std::string own = fiche_around("<ingredient name=\"stardust\">1 cup<amount batch=\"b\">2 cups</amount></ingredient>", us);
  const Result made = converted(own, wish(System::metric, By::mass));
  CHECK(inside(made).find("240 ml") != std::string::npos);
  std::size_t said = 0;
  for (const base::Finding& finding : made.findings) said += finding.rule == "no-density-for-conversion" ? 1U : 0U;
  CHECK(said == 1);
  REQUIRE(made.finding("no-density-for-conversion") != nullptr);
  CHECK(made.finding("no-density-for-conversion")->message == "\"1 cup\" stays a volume: the ingredient names no food");
}

TEST_CASE("the form that prep names decides the density, where the table has it") {
  const std::string sifted = fiche_around("<ingredient food=\"flour-wheat-cake\" prep=\"sifted\">1 cup</ingredient>", us);
  const std::string plain = fiche_around("<ingredient food=\"flour-wheat-cake\">1 cup</ingredient>", us);
  const food::Food* flour = food::food_by_id("flour-wheat-cake");
  REQUIRE(flour != nullptr);
  const auto form = food::density_of(*flour, "sifted");
  REQUIRE(form);
  CAPTURE(inside(converted(sifted, wish(System::metric, By::mass))), inside(converted(plain, wish(System::metric, By::mass))));
  const auto grams = std::to_string((form->grams_per_ml * base::Ratio(473176473, 2000000)).nearest());
  CHECK(inside(converted(sifted, wish(System::metric, By::mass))).find(">" + grams + " g<") != std::string::npos);
}

TEST_CASE("the declared units follow, and those of the author's figures are remembered") {
  struct Declared {
    const char* own;
    System units;
    const char* becomes;
  };
  for (const Declared& row : {Declared{"units=\"metric\"", System::us, "units=\"us\" was-units=\"metric\""},
                              Declared{"", System::us, "units=\"us\" was-units=\"none\""},
                              Declared{"", System::metric, ""}}) {
    CAPTURE(row.own, row.becomes);
    const std::string own = fiche_around("<ingredient>250 g</ingredient>", row.own);
    const std::string made = converted(own, wish(row.units)).xml;
    const std::string expected = std::string(row.becomes).empty() ? "lang=\"en\"><title>" : "lang=\"en\" " + std::string(row.becomes) + "><title>";
    CHECK(made.find(expected) != std::string::npos);
    CHECK(converted(made, wish(System::metric)).xml == own);
  }
}

TEST_CASE("a name whose system nobody declared stops the conversion") {
  const std::string own = fiche_around("<ingredient>250 g</ingredient><ingredient>1 cup</ingredient>");
  const Result made = converted(own, wish(System::us));
  CHECK(made.xml == own);
  REQUIRE(made.findings.size() == 1);
  CHECK(made.findings.front().rule == "not-converted");
  CHECK(made.findings.front().severity == base::Severity::error);
  CHECK(own.substr(made.findings.front().where.begin, made.findings.front().where.end - made.findings.front().where.begin)
            .find("cup") != std::string::npos);
}

TEST_CASE("a figure that cannot be read is left, and said") {
  const std::string own = fiche_around("<ingredient>250 g</ingredient><ingredient>25O grms</ingredient>", metric);
  const Result made = converted(own, wish(System::us));
  CHECK(inside(made).find("<ingredient>25O grms</ingredient>") != std::string::npos);
  REQUIRE(made.finding("not-converted") != nullptr);
  CHECK(made.finding("not-converted")->severity == base::Severity::warning);
}

TEST_CASE("what the tools measure too coarsely for the food is said, with a better way") {
  const std::string own = fiche_around("<ingredient name=\"leaf\" food=\"gelatine-leaf\">3.4 g</ingredient>", metric);
  const fiche::Kitchen coarse = kitchen_of(
      "<kitchen xmlns=\"urn:tamis:fiche:1\" name=\"K\"><scales reads=\"5 g\" most=\"15 kg\"/></kitchen>");
  const Result made = converted(own, wish(System::us), coarse);
  const base::Finding* finding = made.finding("conversion-beyond-tolerance");
  REQUIRE(finding != nullptr);
  CHECK(finding->severity == base::Severity::warning);
  CHECK(finding->message.find("\"3.4 g\" becomes ") == 0);
  CHECK(finding->message.find("leaf allows 1.0 %") != std::string::npos);
  CHECK_FALSE(finding->advice.empty());
}

TEST_CASE("the kitchen decides how grave a conversion's finding is, and whether it is said") {
  const std::string own = fiche_around("<ingredient>25O grms</ingredient>", metric);
  for (const char* severity : {"off", "error"}) {
    const fiche::Kitchen kitchen = kitchen_of("<kitchen xmlns=\"urn:tamis:fiche:1\" name=\"K\"><rule id=\"not-converted\" severity=\"" +
                                              std::string(severity) + "\"/></kitchen>");
    const Result made = converted(own, wish(System::us), kitchen);
    CAPTURE(severity);
    CHECK((made.finding("not-converted") == nullptr) == (std::string(severity) == "off"));
    if (const auto* finding = made.finding("not-converted")) CHECK(finding->severity == base::Severity::error);
  }
}

TEST_CASE("a figure changed after a conversion counts as the author's from then on") {
  std::string made = converted(fiche_around("<ingredient>225 g</ingredient><ingredient>100 g</ingredient>", metric), wish(System::us)).xml;
  const std::size_t at = made.find("was=\"225 g\">") + 12;
  made.replace(at, made.find('<', at) - at, "11 oz");
  const Result back = converted(made, wish(System::metric));
  CHECK(inside(back) == "<ingredient was=\"11 oz\">312 g</ingredient><ingredient>100 g</ingredient>");
  REQUIRE(back.finding("changed-after-conversion") != nullptr);
  CHECK(back.finding("changed-after-conversion")->message ==
        "\"11 oz\" is no conversion of the author's \"225 g\" any more: it was changed since");
  CHECK(back.findings.size() == 1);
}

TEST_CASE("a changed figure whose bare name means something else to the author is respelled exactly") {
  std::string made = converted(fiche_around("<ingredient>237 ml</ingredient>", metric), wish(System::us)).xml;
  const std::size_t at = made.find("was=\"237 ml\">") + 13;
  made.replace(at, made.find('<', at) - at, "2 cups");
  CHECK(inside(converted(made, wish(System::metric))) == "<ingredient>473.176 ml</ingredient>");
}

TEST_CASE("findings of a converted document point to the author's figure in the source") {
  const std::string own = fiche_around("<ingredient name=\"x\">1 cup</ingredient>", us);
  const Result made = converted(own, wish(System::metric, By::mass));
  REQUIRE(made.findings.size() == 1);
  const base::Span where = made.findings.front().where;
  CHECK(own.substr(where.begin, where.end - where.begin) == "1 cup");
}

TEST_CASE("decimal signs and units are those of the language") {
  const std::string own = fiche_around("<ingredient>1 lb</ingredient><ingredient>3 lb</ingredient>", us, "fr");
  CHECK(inside(converted(own, wish(System::metric))).find(">1,36 kg<") != std::string::npos);
}

TEST_CASE("a kitchen file and a document that is no fiche come back as they are") {
  const std::string kitchen = "<kitchen xmlns=\"urn:tamis:fiche:1\" name=\"K\"><scales reads=\"1 g\"/></kitchen>";
  CHECK(converted(kitchen, wish(System::us)).xml == kitchen);
}
