#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>

#include "tests/rules/checking.h"
#include "tests/shared_files.h"

using namespace tamis;
using tests::check_text;

namespace {

fiche::Kitchen house() {
  const format::Read read = format::read(
      std::make_shared<const base::Source>("kitchen.xml", tests::project_file("tests/kitchen/kitchen.xml")));
  return read.document ? fiche::read_kitchen(read.document) : fiche::Kitchen{};
}

std::vector<std::string> good_fiches() {
  std::vector<std::string> out;
  for (const auto& entry : std::filesystem::directory_iterator(std::string(TAMIS_SOURCE_DIR) + "/tests/rules/looks_wrong")) {
    out.push_back("tests/rules/looks_wrong/" + entry.path().filename().string());
  }
  std::sort(out.begin(), out.end());
  return out;
}

}  // namespace

// Techniques that a checker without a cook in it would doubt. Each file says in its first comment what looks wrong.
TEST_CASE("a good fiche that looks wrong raises nothing, from any rule and of any severity") {
  const fiche::Kitchen kitchen = house();
  REQUIRE(kitchen.name == "Ferry Steps");
  const std::vector<std::string> paths = good_fiches();
  CHECK(paths.size() >= 22);
  for (const std::string& path : paths) {
    const std::string text = tests::project_file(path);
    CAPTURE(path);
    CHECK(text.find(" state=\"released\" ") != std::string::npos);
    CHECK(check_text(text, kitchen, fiche::empty_library(), path).lines() == "");
  }
}

// The silence above is worth something only where one thing amiss is heard.
TEST_CASE("the same fiches are not silent when one thing is taken out of them") {
  struct Row {
    const char* file;
    const char* from;
    const char* to;
    const char* rules;
  };
  const Row row = GENERATE(values<Row>({
      {"milk-ice-boiled-onto-yolks", "contains=\"milk egg\"", "contains=\"milk\"", "allergen-left-out"},
      {"milk-ice-boiled-onto-yolks", "<allergens contains=\"milk egg\">Milk, egg.</allergens>", "", "no-allergen-statement"},
      {"milk-ice-boiled-onto-yolks", "batch=\"1.25 kg\"", "batch=\"0.5 kg\"", "batch-beyond-trials"},
      {"milk-ice-boiled-onto-yolks", " who=\"the cook on pastry\"", "", "control-point-incomplete"},
      {"syrup-onto-whites", "batch=\"8 portions\" verdict=\"passed\"", "batch=\"8 portions\" verdict=\"failed\"", "no-trial-passed"},
      {"sugar-in-three-goes", "contains=\"egg gluten wheat milk\"", "contains=\"egg milk\"", "allergen-left-out"},
      {"sugar-in-three-goes", "<keep where=\"dry store\" for=\"2 days\">Wrapped when cold.</keep>", "", "nothing-about-keeping"},
      {"sugar-in-three-goes", "<until>until it springs back and the sugar\n      crackles</until>", "<until>until done</until>",
       "done-without-picture"},
      {"duck-lifted-out-early", "<until>until the fat has run and the\n      skin is brown and thin</until>", "as usual", "as-usual"},
      {"kaesespaetzle", "<until>bis der Teig Blasen wirft</until>", "bis er fertig ist", "done-without-picture"},
      {"kaesespaetzle", ", <until>bis der Teig Blasen wirft</until>", " wie üblich", "as-usual"},
      {"kaesespaetzle", ", <until>bis der Teig Blasen wirft</until>", " und etwas Butter zugeben", "amount-without-measure"},
      {"creme-au-caramel", "<food-temp>175 °C</food-temp>, <until>jusqu'à une couleur acajou</until>",
       "blond, <until>jusqu'à ce qu'il soit prêt</until>", "done-without-picture"},
      {"choux-one-cream-two-ways", "<until>until smooth</until>", "with a little milk", "amount-without-measure"},
  }));
  const std::string path = std::string("tests/rules/looks_wrong/") + row.file + ".fiche.xml";
  std::string text = tests::project_file(path);
  CAPTURE(row.file, row.from);
  const std::size_t at = text.find(row.from);
  REQUIRE(at != std::string::npos);
  text.replace(at, std::string(row.from).size(), row.to);
  const fiche::Kitchen kitchen = house();
  CHECK(check_text(text, kitchen, fiche::empty_library(), path).rules() == row.rules);
}
