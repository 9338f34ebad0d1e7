#include <catch2/catch.hpp>

#include <map>
#include <set>
#include <string>

#include "core/measure/amount.h"
#include "core/measure/kitchen_tools.h"
#include "core/measure/read.h"
#include "core/measure/trade_word.h"
#include "core/measure/unit.h"
#include "tests/measure/dump.h"

namespace {

using namespace tamis::measure;
using tamis::base::Ratio;
using tamis::tests::reading;

constexpr Kinds every_kind = ~0U;

TEST_CASE("every unit has an id of its own, a size above zero and a source", "[units]") {
  std::set<std::string_view> ids;
  for (const Unit& unit : units()) {
    CAPTURE(unit.id);
    CHECK(ids.insert(unit.id).second);
    CHECK(unit.to_base > 0);
    CHECK(unit.offset.ok());
    CHECK_FALSE(unit.source.empty());
    CHECK(unit_by_id(unit.id) == &unit);
    CHECK((unit.kind == Kind::temperature || unit.offset == 0));
  }
  CHECK(unit_by_id("nonesuch") == nullptr);
}

TEST_CASE("every unit has a written name in English", "[units]") {
  for (const Unit& unit : units()) {
    if (unit.id == "piece") continue;
    CAPTURE(unit.id);
    CHECK_FALSE(written_name(unit, "en", false).empty());
    CHECK_FALSE(written_name(unit, "en", true).empty());
  }
}

TEST_CASE("a name has one meaning a kind, a language and a system", "[units]") {
  // Same name, same language: the declared system must be able to tell the units apart.
  std::map<std::string, std::set<std::string>> owners;
  for (const UnitName& name : unit_names()) {
    const Unit& unit = *unit_by_id(name.unit);
    for (const System system : {System::metric, System::us, System::imperial}) {
      const bool si = unit.system == System::si;
      if (!(unit.system == system || unit.also == system || (si && system == System::metric))) continue;
      owners[std::string(name.language) + "|" + std::string(name.name) + "|" + std::string(kind_name(unit.kind)) + "|" +
             std::string(system_name(system))]
          .insert(std::string(unit.id));
    }
  }
  for (const auto& [key, ids] : owners) {
    CAPTURE(key);
    CHECK(ids.size() == 1);
  }
}

TEST_CASE("units of equal definition are equal", "[units]") {
  const auto size = [](const char* id) { return unit_by_id(id)->to_base; };
  CHECK(size("lb") == size("oz") * 16);
  CHECK(size("lb") == size("grain") * 7000);
  CHECK(size("gallon-us") == Ratio(231) * *Ratio::parse("16.387064"));
  CHECK(size("gallon-us") == size("quart-us") * 4);
  CHECK(size("quart-us") == size("pint-us") * 2);
  CHECK(size("pint-us") == size("cup-us") * 2);
  CHECK(size("cup-us") == size("gill-us") * 2);
  CHECK(size("cup-us") == size("floz-us") * 8);
  CHECK(size("floz-us") == size("tbsp-us") * 2);
  CHECK(size("tbsp-us") == size("tsp-us") * 3);
  CHECK(size("bushel-us") == *Ratio::parse("2150.42") * *Ratio::parse("16.387064"));
  CHECK(size("bushel-us") == size("peck-us") * 4);
  CHECK(size("peck-us") == size("dry-quart-us") * 8);
  CHECK(size("dry-quart-us") == size("dry-pint-us") * 2);
  CHECK(size("gallon-imperial") == size("quart-imperial") * 4);
  CHECK(size("quart-imperial") == size("pint-imperial") * 2);
  CHECK(size("pint-imperial") == size("gill-imperial") * 4);
  CHECK(size("pint-imperial") == size("floz-imperial") * 20);
  CHECK(size("pint-imperial") == size("cup-imperial") * 2);
  CHECK(size("yd") == size("ft") * 3);
  CHECK(size("ft") == size("in") * 12);
  CHECK(size("pinch") == size("tsp-us") / 16);
  CHECK(size("can-no-10") == size("cup-us") * 12);
}

TEST_CASE("any two units of a kind convert there and back exactly", "[units][property]") {
  for (const Unit& from : units()) {
    for (const Unit& to : units()) {
      if (is_gas_mark(from) || is_gas_mark(to)) continue;
      const Ratio there = convert(Ratio(7, 3), from, to);
      if (from.kind != to.kind) {
        CHECK_FALSE(there.ok());
        continue;
      }
      if (!there.ok() || !(convert(there, to, from) == Ratio(7, 3))) {
        CAPTURE(from.id, to.id, there.text());
        FAIL("not the same back");
      }
    }
  }
}

TEST_CASE("gas marks convert where there is a mark", "[units]") {
  const Unit& mark = *unit_by_id("gas-mark");
  const Unit& fahrenheit = *unit_by_id("degf");
  CHECK(convert(4, mark, fahrenheit) == Ratio(350));
  CHECK(convert(Ratio(1, 4), mark, fahrenheit) == Ratio(225));
  CHECK(convert(350, fahrenheit, mark) == Ratio(4));
  CHECK(convert(250, fahrenheit, mark) == Ratio(1, 2));
  CHECK_FALSE(convert(360, fahrenheit, mark).ok());
  CHECK_FALSE(convert(10, mark, fahrenheit).ok());
  CHECK(nearest_gas_mark(180) == Ratio(4));
  CHECK(nearest_gas_mark(100) == Ratio(1, 4));
  CHECK(nearest_gas_mark(300) == Ratio(9));
}

TEST_CASE("a unit belongs to its systems", "[units]") {
  CHECK(belongs_to(*unit_by_id("g"), System::metric));
  CHECK_FALSE(belongs_to(*unit_by_id("g"), System::us));
  CHECK(belongs_to(*unit_by_id("oz"), System::us));
  CHECK(belongs_to(*unit_by_id("oz"), System::imperial));
  CHECK_FALSE(belongs_to(*unit_by_id("oz"), System::metric));
  CHECK_FALSE(belongs_to(*unit_by_id("cup-us"), System::imperial));
  CHECK(belongs_to(*unit_by_id("pinch"), System::us));
  CHECK_FALSE(belongs_to(*unit_by_id("cup-us"), System::none));
}

TEST_CASE("every trade word has an id, an English name, a meaning that can be read, and a source", "[trade]") {
  std::set<std::string_view> ids;
  for (const TradeWord& word : trade_words()) {
    CAPTURE(word.id);
    CHECK(ids.insert(word.id).second);
    CHECK_FALSE(word.source.empty());
    CHECK_FALSE(written_trade_word(word, "en").empty());
    if (word.meaning.empty()) continue;
    const auto meaning = read_amount(word.meaning, set_of(word.kind), reading("en"));
    REQUIRE(meaning);
    CHECK(meaning->has_figure());
  }
}

TEST_CASE("a name stands for one trade word a language, and for no unit", "[trade]") {
  std::map<std::string, std::string_view> owners;
  for (const TradeWord& word : trade_words()) {
    for (const TradeName& name : names_of(word)) {
      CAPTURE(name.name, name.language, word.id);
      const auto [at, added] = owners.emplace(std::string(name.language) + ":" + std::string(name.name), word.id);
      CHECK(added);
      CHECK(read_trade_word(name.name, name.language) == &word);
    }
  }
}

TEST_CASE("every name of every unit is read as a unit of its row", "[units]") {
  for (const UnitName& name : unit_names()) {
    const Unit& unit = *unit_by_id(name.unit);
    const std::string language = name.language.empty() ? "en" : std::string(name.language);
    CAPTURE(name.name, language, unit.id);
    const System system = unit.system == System::si || unit.system == System::trade ? System::metric : unit.system;
    const bool prefix = unit.id == "gas-mark" || unit.id == "thermostat";
    const std::string text = prefix ? std::string(name.name) + " 4" : "4 " + std::string(name.name);
    const auto read = read_amount(text, set_of(unit.kind), reading(language, system));
    REQUIRE(read);
    CHECK(read->low.back().unit == &unit);
  }
  CHECK(read_amount("1 g", every_kind, reading("en")));
}

}  // namespace
