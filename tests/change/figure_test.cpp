#include "core/change/figure.h"

#include <catch2/catch.hpp>

#include "core/measure/read.h"

using namespace tamis;
using change::Passage;
using change::Target;
using measure::Kind;
using measure::System;

namespace {

measure::Reading reading(System system, const std::string& language = "en") { return {language, system, 0}; }

measure::Amount amount(const std::string& text, System system) {
  const auto read = measure::read_amount(text, measure::amount_kinds | measure::temperature_kinds, reading(system));
  CAPTURE(text);
  REQUIRE(read);
  return *read;
}

std::string plain(std::string text) {
  for (const std::string space : {"\u00A0", "\u202F"}) {
    for (std::size_t at = text.find(space); at != std::string::npos; at = text.find(space)) {
      text.replace(at, space.size(), " ");
    }
  }
  return text;
}

std::string temperature(const std::string& text, System to, bool gate, bool control) {
  const measure::KitchenTools tools;
  Target target{to, &tools, {}, false, gate, control};
  const auto made = change::convert_figure(amount(text, System::metric), {Kind::temperature, 1, 0}, target);
  REQUIRE(made);
  return plain(change::write_figure(made->amount, reading(to)));
}

}  // namespace

TEST_CASE("a figure stands in the system whose units it uses, and a count in every one") {
  struct Row {
    const char* text;
    System read_as;
    bool metric, us, imperial;
  };
  const Row rows[] = {
      {"250 g", System::none, true, false, false},    {"8 oz", System::none, false, true, true},
      {"1 cup", System::us, false, true, false},      {"1 cup", System::metric, true, false, false},
      {"1 tbsp", System::imperial, false, false, true}, {"4", System::none, true, true, true},
      {"1 pinch", System::none, true, true, true},    {"to taste", System::none, true, true, true},
      {"180 °C", System::none, true, false, false},   {"350 °F", System::none, false, true, true},
      {"gas mark 4", System::none, false, false, true}, {"2 lb 4 oz", System::none, false, true, true}};
  for (const Row& row : rows) {
    CAPTURE(row.text);
    const measure::Amount read = amount(row.text, row.read_as);
    CHECK(change::stands_in(read, System::metric) == row.metric);
    CHECK(change::stands_in(read, System::us) == row.us);
    CHECK(change::stands_in(read, System::imperial) == row.imperial);
  }
}

TEST_CASE("a temperature rounds to the nearest degree, a limit to its safe side") {
  struct Row {
    const char* text;
    System to;
    bool gate, control;
    const char* becomes;
  };
  const Row rows[] = {
      {"82–84 °C", System::us, false, false, "180–183 °F"},        // 179.6 and 183.2
      {"24–30 °C", System::us, true, false, "76–86 °F"},           // 75.2: a gate does not grow
      {"at most 38 °C", System::us, false, false, "at most 100 °F"},   // 100.4
      {"at least 74 °C", System::us, false, false, "at least 166 °F"}, // 165.2
      {"74 °C", System::us, false, false, "165 °F"},
      {"74 °C", System::us, false, true, "166 °F"},                // a limit that must be reached
      {"4 °C", System::us, false, true, "39 °F"},                  // 39.2, a limit that must not be passed
      {"7 °C", System::us, false, true, "44 °F"},                  // 44.6
      {"40 °C", System::us, false, true, "104 °F"},
      {"-18 °C", System::us, false, false, "0 °F"},                // -0.4
      {"165 °F", System::metric, false, true, "74 °C"},            // 73.9
      {"at most 110 °F", System::metric, false, false, "at most 43 °C"},  // 43.3
      {"41 °F or lower", System::metric, false, false, "at most 5 °C"},
      {"145 °F", System::metric, false, true, "63 °C"},            // 62.8
      {"about 180 °F", System::metric, false, false, "about 82 °C"}};
  for (const Row& row : rows) {
    CAPTURE(row.text, row.becomes);
    CHECK(temperature(row.text, row.to, row.gate, row.control) == row.becomes);
  }
}

TEST_CASE("no limit of a whole degree moves to its unsafe side, either way") {
  const measure::KitchenTools tools;
  for (int degree = -30; degree <= 250; ++degree) {
    for (const System to : {System::us, System::metric}) {
      const std::string unit = to == System::us ? " °C" : " °F";
      const Target target{to, &tools, {}, false, false, false};
      const measure::Amount least = amount("at least " + std::to_string(degree) + unit, System::metric);
      const measure::Amount most = amount("at most " + std::to_string(degree) + unit, System::metric);
      CAPTURE(degree, unit);
      const auto up = change::convert_figure(least, {Kind::temperature, 1, 0}, target);
      const auto down = change::convert_figure(most, {Kind::temperature, 1, 0}, target);
      REQUIRE((up && down));
      CHECK(up->amount.low_base() >= least.low_base());
      CHECK(up->amount.low_base() - least.low_base() < 2);
      CHECK(down->amount.high_base() <= most.high_base());
      CHECK(most.high_base() - down->amount.high_base() < 2);
    }
  }
}

TEST_CASE("lengths that share a unit say it once") {
  const auto read = measure::read_lengths("12 × 20 × 2 1/2 in", reading(System::us));
  REQUIRE(read);
  CHECK(plain(change::write_lengths(*read, reading(System::us))) == "12 × 20 × 2 ½ in");
  const auto mixed = measure::read_lengths("1 m × 30 cm", reading(System::metric));
  REQUIRE(mixed);
  CHECK(plain(change::write_lengths(*mixed, reading(System::metric))) == "1 m × 30 cm");
}

TEST_CASE("the decimal sign is the document's own where it states one") {
  const measure::Amount weight = amount("2.5 kg", System::metric);
  CHECK(plain(change::write_figure(weight, {"fr", System::metric, 0})) == "2,5 kg");
  CHECK(plain(change::write_figure(weight, {"fr", System::metric, '.'})) == "2.5 kg");
  CHECK(plain(change::write_figure(weight, {"en", System::metric, ','})) == "2,5 kg");
}

TEST_CASE("an amount too large for exact arithmetic is not converted") {
  const measure::KitchenTools tools;
  measure::Amount huge = amount("1 kg", System::metric);
  huge.low.front().value = base::Ratio::overflow();
  CHECK_FALSE(change::convert_figure(huge, {Kind::mass, 1, 0}, {System::us, &tools, {}, false, false, false}));
}
