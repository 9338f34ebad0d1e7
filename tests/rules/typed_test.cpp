#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>

#include "core/format/draft.h"
#include "tests/rules/checking.h"
#include "tests/shared_files.h"

using namespace tamis;

namespace {

std::vector<std::string> typed_recipes() {
  std::vector<std::string> out;
  for (const auto& entry : std::filesystem::directory_iterator(std::string(TAMIS_SOURCE_DIR) + "/tests/rules/typed")) {
    out.push_back(entry.path().stem().string());
  }
  std::sort(out.begin(), out.end());
  return out;
}

/// What the check says of a recipe as it is typed, without the places.
std::string said_of(const std::string& typed) {
  const fiche::Kitchen kitchen;
  const std::string xml = format::read_draft(base::Source("typed.txt", typed), kitchen, {}).xml;
  std::string out;
  for (const base::Finding& finding : tests::check_text(xml, kitchen).findings) {
    out += (out.empty() ? "" : "\n") + finding.rule + ": " + finding.message;
  }
  return out;
}

std::string typed(const std::string& name) { return tests::project_file("tests/rules/typed/" + name + ".txt"); }

}  // namespace

// Good recipes as people type them, without marks: custards, foams, gelatine, chocolate, sauces bound with egg.
TEST_CASE("a good recipe as it is typed raises nothing") {
  const std::vector<std::string> names = typed_recipes();
  CHECK(names.size() >= 35);
  for (const std::string& name : names) {
    CAPTURE(name);
    REQUIRE_FALSE(typed(name).empty());
    CHECK(said_of(typed(name)) == "");
  }
}

TEST_CASE("the same typed recipes with one figure or word wrong raise that one thing") {
  struct Row {
    const char* name;
    const char* from;
    const char* to;
    const char* finding;
  };
  const Row row = GENERATE(values<Row>({
      {"raspberry-mousse", "28 °C", "48 °C", "base-off-its-folding-heat: a base with gelatine is folded near setting, at 20–30 °C; what it goes into is at 48 °C: "
                                             "it melts the foam, and the gelatine sinks before it sets"},
      {"passion-cremeux", "85 °C", "65 °C", "egg-off-its-heat: a curd cooks at 76–90 °C and has not begun to thicken at 65 °C"},
      {"mirror-glaze", "20 g gelatine", "200 g gelatine", "gelatine-out-of-dose: the gelatine, counted at 200 bloom, is 68–102 % of the water it sets; 0.6–5 % is usual"},
      {"macarons", "118 °C", "148 °C", "meringue-off-its-heat: the syrup of an Italian meringue is poured at 115–121 °C, and this says 148 °C"},
      {"eggnog", "71 °C", "91 °C", "egg-off-its-heat: a custard without starch curdles above 85 °C, and this takes it to 91 °C"},
      {"bavarois", "83 °C", "93 °C", "egg-off-its-heat: a custard without starch curdles above 85 °C, and this takes it to 93 °C"},
      {"bavarois", "22 °C", "62 °C", "base-off-its-folding-heat: a base with gelatine is folded near setting, at 20–30 °C; what it goes into is at 62 °C: "
                                     "it melts the foam, and the gelatine sinks before it sets"},
      {"bavarois", "Réhydrater la gélatine dans l'eau froide.", "Peser la gélatine.", "gelatine-not-soaked: the gelatine goes in dry: nothing soaks it first"},
      {"whipped-ganache", "12 hours", "1 hour", "ganache-whipped-warm: a ganache rests cold for 4–24 h before it is whipped; this has 60 min"},
  }));
  CAPTURE(row.name, row.from);
  std::string text = typed(row.name);
  const std::size_t at = text.find(row.from);
  REQUIRE(at != std::string::npos);
  text.replace(at, std::string(row.from).size(), row.to);
  CHECK(said_of(text) == row.finding);
}
