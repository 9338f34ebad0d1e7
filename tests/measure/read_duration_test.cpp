#include <catch2/catch.hpp>

#include "core/measure/read.h"
#include "core/measure/write.h"
#include "tests/measure/dump.h"

namespace {

using namespace tamis::measure;
using tamis::tests::dump;
using tamis::tests::reading;

struct Row {
  const char* text;
  const char* expected;
};

void check_rows(std::initializer_list<Row> rows, const Reading& how) {
  for (const Row& row : rows) {
    CAPTURE(row.text, how.language);
    CHECK(dump(read_duration(row.text, how)) == row.expected);
  }
}

TEST_CASE("durations are read as people write them", "[read]") {
  check_rows({{"90 min", "90 min"},
              {"1 h 30", "1 h + 30 min"},
              {"1h30", "1 h + 30 min"},
              {"1h0", "1 h + 0 min"},
              {"1 h 0 min", "1 h + 0 min"},
              {"1 h 30 min", "1 h + 30 min"},
              {"1h 30m", "1 h + 30 min"},
              {"1½ hours", "3/2 h"},
              {"1 hour 40 minutes", "1 h + 40 min"},
              {"1 hour and 30 minutes", "1 h + 30 min"},
              {"1 hour, 30 minutes", "1 h + 30 min"},
              {"an hour and a half", "3/2 h"},
              {"two hours", "2 h"},
              {"one and a half hours", "3/2 h"},
              {"half an hour", "1/2 h"},
              {"3 to 4 hours", "3 h .. 4 h"},
              {"20 minutes to 1/2 hour", "20 min .. 1/2 h"},
              {"12 to 24 h", "12 h .. 24 h"},
              {"2 days", "2 day"},
              {"1 week", "1 week"},
              {"3 months", "3 month"},
              {"1 year", "1 year"},
              {"15 s", "15 s"},
              {"at least 15 seconds", ">= 15 s"},
              {"about 10 minutes", "~ 10 min"},
              {"up to 2 h", "<= 2 h"},
              {"within 4 hours", "<= 4 h"},
              {"no longer than 10 min", "<= 10 min"},
              {"2 h or longer", ">= 2 h"},
              {"1 h 75", "unreadable-amount"},
              {"1:30", "unreadable-amount"},
              {"30 minits", "unknown-unit"},
              {"30", "unreadable-amount"},
              {"250 g", "wrong-kind"}},
             reading("en"));
}

TEST_CASE("ISO 8601 durations", "[read]") {
  check_rows({{"PT1H30M", "1 h + 30 min"},
              {"PT90M", "90 min"},
              {"P1D", "1 day"},
              {"P1DT12H", "1 day + 12 h"},
              {"P2W", "2 week"},
              {"PT0.5H", "1/2 h"},
              {"PT0,5H", "1/2 h"},
              {"PT30S", "30 s"},
              {"P1M", "unknown-trade-word"},
              {"P1Y", "unknown-trade-word"},
              {"PT", "wrong-kind"},
              {"P", "unknown-trade-word"},
              {"PT1M1H", "unknown-trade-word"},
              {"PT1H1H", "unknown-trade-word"},
              {"PT1", "unknown-trade-word"}},
             reading("en"));
}

TEST_CASE("durations are written as ISO 8601", "[write]") {
  for (const Row& row : {Row{"90 min", "PT1H30M"}, Row{"1 h 30", "PT1H30M"}, Row{"45 s", "PT45S"},
                         Row{"1½ min", "PT1M30S"}, Row{"2 days", "PT48H"}, Row{"0 min", "PT0S"}}) {
    CAPTURE(row.text);
    const auto read = read_duration(row.text, reading("en"));
    REQUIRE(read);
    CHECK(write_iso_duration(*read) == row.expected);
    CHECK(read_duration(row.expected, reading("en"))->low_base() == read->low_base());
  }
}

TEST_CASE("durations in French, German and Spanish", "[read]") {
  check_rows({{"1 h 30", "1 h + 30 min"},
              {"2 heures", "2 h"},
              {"une heure et demie", "3/2 h"},
              {"une demi-heure", "1/2 h"},
              {"une nuit", "word overnight"},
              {"10 à 15 minutes", "10 min .. 15 min"},
              {"au moins 12 h", ">= 12 h"}},
             reading("fr"));
  check_rows({{"mindestens 12 Std.", ">= 12 h"},
              {"2 Stunden", "2 h"},
              {"anderthalb Stunden", "3/2 h"},
              {"eine halbe Stunde", "1/2 h"},
              {"über Nacht", "word overnight"},
              {"1 Std. 30 Min.", "1 h + 30 min"},
              {"3 Tage", "3 day"}},
             reading("de"));
  check_rows({{"una hora y media", "3/2 h"},
              {"media hora", "1/2 h"},
              {"2 horas", "2 h"},
              {"toda la noche", "word overnight"},
              {"unos 10 minutos", "~ 10 min"}},
             reading("es"));
}

}  // namespace
