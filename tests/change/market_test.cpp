#include "core/change/market.h"

#include <set>

#include "core/food/food.h"
#include "tests/change/converting.h"

using namespace tamis;
using namespace tamis::tests;

namespace {

ConvertWish market_wish(const std::string& market, System units = System::metric) {
  return {units, By::as_written, "", market};
}

std::vector<std::string> split(std::string_view list, char at) {
  std::vector<std::string> out;
  while (!list.empty()) {
    const std::size_t end = std::min(list.find(at), list.size());
    out.emplace_back(list.substr(0, end));
    list.remove_prefix(std::min(end + 1, list.size()));
  }
  return out;
}

}  // namespace

TEST_CASE("the market table names foods, markets and figures that exist, and says why and what remains") {
  for (const change::MarketRow& row : change::market_rows()) {
    CAPTURE(row.market, row.home, row.food, row.when);
    for (const std::string& food : split(row.food, '|')) CHECK(food::food_by_id(food) != nullptr);
    CHECK((row.to.empty() || food::food_by_id(row.to) != nullptr));
    for (const std::string& market : split(row.market, '|')) {
      CHECK(std::count(change::markets().begin(), change::markets().end(), market) == 1);
    }
    for (const std::string& home : split(row.home, '|')) {
      CHECK((home == "EU" || std::count(change::markets().begin(), change::markets().end(), home) == 1));
      for (const std::string& market : split(row.market, '|')) CHECK(home != market);
    }
    const bool figured = row.recalculation == change::Recalculation::fat || row.recalculation == change::Recalculation::bloom;
    CHECK((!figured || (base::Ratio::parse(row.from_figure) && base::Ratio::parse(row.to_figure))));
    CHECK((row.recalculation != change::Recalculation::times || base::Ratio::parse(row.to_figure)));
    for (const std::string_view words : {row.english, row.french, row.english_risk, row.french_risk, row.source}) {
      CHECK_FALSE(words.empty());
      CHECK_FALSE(words.ends_with('.'));
    }
    for (const std::string_view setting : {row.sets, row.when}) {
      if (!setting.empty()) CHECK(fiche::attribute_named(setting.substr(0, setting.find('='))) != fiche::At::unknown);
    }
  }
}

TEST_CASE("no two rows of the market table speak of the same food in one place") {
  std::set<std::string> seen;
  for (const change::MarketRow& row : change::market_rows()) {
    for (const std::string& market : split(row.market, '|')) {
      for (const std::string& food : split(row.food, '|')) {
        const std::string key = market + "/" + std::string(row.home) + "/" + food + "/" + std::string(row.when);
        CAPTURE(key);
        CHECK(seen.insert(key).second);
      }
    }
  }
}

TEST_CASE("what can be bought there stands in, recalculated, and the author's own beside it") {
  struct Row {
    const char* lang;
    const char* market;
    const char* attributes;
    const char* amount;
    const char* food;
    const char* becomes;
  };
  const Row rows[] = {
      // square-root rule, Gelatin Handbook: 9 g × √(200/225) = 8.485 g; 160 bloom: 7.589 g
      {"en-GB", "US", "food=\"gelatine-leaf\" bloom=\"200\"", "9 g", "gelatine-powder", "8.5 g"},
      {"en-GB", "US", "food=\"gelatine-leaf\" bloom=\"160\"", "9 g", "gelatine-powder", "7.6 g"},
      {"en-GB", "US", "food=\"gelatine-leaf\" bloom=\"200\"", "4 leaves", "gelatine-powder", "7.5 g"},
      {"en-US", "FR", "food=\"gelatine-powder\" bloom=\"225\"", "7 g", "gelatine-leaf", "7.4 g"},
      {"fr", "US", "food=\"butter-unsalted\" fat=\"82 %\"", "400 g", "butter-unsalted", "410 g"},
      {"en-US", "FR", "food=\"butter-unsalted\"", "410 g", "butter-unsalted", "400 g"},
      {"en-GB", "US", "food=\"yeast-fresh\"", "30 g", "yeast-instant", "10 g"},
      {"en-GB", "US", "food=\"cream-35\"", "500 g", "cream-36", "500 g"},
      {"fr", "US", "food=\"flour-wheat-t55\"", "500 g", "flour-wheat-white", "500 g"},
      {"en-US", "DE", "food=\"flour-wheat-cake\"", "300 g", "flour-wheat-t45", "300 g"}};
  for (const Row& row : rows) {
    CAPTURE(row.attributes, row.market, row.becomes);
    const std::string own =
        fiche_around("<ingredient " + std::string(row.attributes) + ">" + row.amount + "</ingredient>", "units=\"metric\"", row.lang);
    const Result made = converted(own, market_wish(row.market));
    const std::string text = inside(made);
    CHECK(text.find("<ingredient food=\"" + std::string(row.food) + "\"") == 0);
    CHECK(text.find(">" + std::string(row.becomes) + "</ingredient>") != std::string::npos);
    CHECK(text.find("<note kind=\"market\">") != std::string::npos);
    CHECK(text.find(" was-food=\"") != std::string::npos);
    REQUIRE(made.finding("market-swap") != nullptr);
    CHECK(made.finding("market-swap")->severity == base::Severity::advice);
    CHECK(converted(made.xml, wish(System::metric)).xml == own);
  }
}

TEST_CASE("eggs take the class of the same weight, and the count stays") {
  struct Row {
    const char* lang;
    const char* market;
    const char* size;
    const char* becomes;
  };
  for (const Row& row : {Row{"fr", "US", "M", "large"}, Row{"fr", "US", "L", "extra large"}, Row{"en-GB", "US", "medium", "large"},
                         Row{"en-GB", "US", "large", "extra large"}, Row{"en-US", "FR", "large", "M"}}) {
    CAPTURE(row.lang, row.size);
    const std::string own = fiche_around("<ingredient food=\"egg-whole\" name=\"eggs\" size=\"" + std::string(row.size) + "\">4</ingredient>",
                                         "units=\"metric\"", row.lang);
    const Result made = converted(own, market_wish(row.market));
    CHECK(inside(made).find("size=\"" + std::string(row.becomes) + "\"") != std::string::npos);
    CHECK(inside(made).find(">4<") != std::string::npos);
    CHECK(converted(made.xml, wish(System::metric)).xml == own);
  }
}

TEST_CASE("a kitchen's own food goes the way of what it is like, with its own strength") {
  const fiche::Kitchen kitchen = kitchen_of(
      "<kitchen xmlns=\"urn:tamis:fiche:1\" name=\"K\"><food id=\"house-leaf\" like=\"gelatine-leaf\" bloom=\"160\"/></kitchen>");
  const std::string own = fiche_around("<ingredient food=\"house-leaf\" pieces=\"3\">9 g</ingredient>", "units=\"metric\"", "en-GB");
  const Result made = converted(own, market_wish("US"), kitchen);
  CHECK(inside(made).find(">7.6 g<") != std::string::npos);
  CHECK(inside(made).find("was-pieces=\"3\"") != std::string::npos);
  CHECK(inside(made).find(" pieces=") == std::string::npos);
  CHECK(converted(made.xml, wish(System::metric), kitchen).xml == own);
}

TEST_CASE("a strength that is not stated is taken as usual, and the finding says so") {
  const Result made =
      converted(fiche_around("<ingredient food=\"gelatine-leaf\">9 g</ingredient>", "units=\"metric\"", "en-GB"), market_wish("US"));
  REQUIRE(made.finding("market-swap") != nullptr);
  CHECK(made.finding("market-swap")->message ==
        "\"leaf gelatine\" is \"powdered gelatin, 225 bloom\" in the US; 0.943 times its weight (200 bloom, taken as usual: it "
        "is not stated, to 225, by the square root)");
}

TEST_CASE("at home nothing is swapped") {
  for (const char* lang : {"en-US", "fr", "de", "en-GB"}) {
    const std::string market = std::string(lang) == "fr" ? "FR" : std::string(lang) == "de" ? "DE" : std::string(lang).substr(3);
    const std::string own = fiche_around(
        "<ingredient food=\"butter-unsalted\">200 g</ingredient><ingredient food=\"cream-35\">200 g</ingredient>", "units=\"metric\"", lang);
    CAPTURE(lang);
    CHECK(converted(own, market_wish(market)).xml == own);
  }
}

TEST_CASE("a French fiche gets its note in French") {
  const Result made = converted(fiche_around("<ingredient food=\"flour-wheat-t45\">200 g</ingredient>", "units=\"metric\"", "fr"), market_wish("US"));
  CHECK(inside(made).find("farine « pastry » au lieu de farine T45") != std::string::npos);
}
