#include "core/measure/bound.h"

#include <catch2/catch.hpp>

using tamis::measure::Bound;
using tamis::measure::bound_before;

namespace {

struct Row {
  const char* words;
  Bound bound;
};

void check_rows(std::initializer_list<Row> rows, const char* language) {
  for (const Row& row : rows) {
    CAPTURE(row.words, language);
    CHECK(bound_before(row.words, language) == row.bound);
  }
}

}  // namespace

TEST_CASE("words right before a figure say which way it bounds", "[bound]") {
  check_rows({{"The core reaches at least ", Bound::least},
              {"Keep it above", Bound::least},
              {"no less than ", Bound::least},
              {"Minimum: ", Bound::least},
              {"At most ", Bound::most},
              {"Cool it below\n ", Bound::most},
              {"not above", Bound::most},
              {"The core is at ", Bound::none},
              {"Heat it up to ", Bound::none},
              {"", Bound::none}},
             "en");
  check_rows({{"au moins ", Bound::least}, {"pas plus de ", Bound::most}, {"chauffer jusqu'à ", Bound::none}}, "fr");
  check_rows({{"mindestens ", Bound::least}, {"unter ", Bound::most}, {"nicht unter ", Bound::least}}, "de");
  check_rows({{"al menos ", Bound::least}, {"menos de ", Bound::most}, {"calentar hasta ", Bound::none}}, "es");
}

TEST_CASE("words farther off bound nothing, whatever they are", "[bound]") {
  check_rows({{"Covered under paper, the core reaches ", Bound::none},
              {"Below the skin the core comes to ", Bound::none},
              {"For at least 30 min at ", Bound::none},
              {"Probe above the bone. The core is at ", Bound::none}},
             "en");
}

TEST_CASE("a negation turns a comparison round where it plainly denies that", "[bound]") {
  check_rows({{"The core is never below ", Bound::least},
              {"It must not fall below ", Bound::least},
              {"It may not be kept below ", Bound::least},
              {"It doesn't go above ", Bound::most},
              {"Stir, and never over ", Bound::most},
              {"Do not open it. Above ", Bound::least}},
             "en");
  check_rows({{"darf nie unter ", Bound::least}}, "de");
  check_rows({{"nunca menos de ", Bound::least}}, "es");
}

TEST_CASE("what a negation farther off denies is for a person to tell", "[bound]") {
  check_rows({{"Do not take it out until it is above ", Bound::unclear},
              {"Do not serve before it is above ", Bound::unclear},
              {"It must not at any time of the service fall below ", Bound::unclear},
              {"Do not open the door: at least ", Bound::least}},
             "en");
}

TEST_CASE("a language with a region is the language", "[bound]") {
  check_rows({{"au moins ", Bound::least}, {"no debe, por 1.5 h, ", Bound::none}}, "fr-CA");
  check_rows({{"must not in 1.5 h fall below ", Bound::unclear}}, "en-US");
}
