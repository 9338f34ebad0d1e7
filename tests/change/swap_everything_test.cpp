#include <algorithm>
#include <filesystem>
#include <set>

#include "core/change/swap_kind.h"
#include "core/fiche/library.h"
#include "tests/change/swapping.h"
#include "tests/shared_files.h"

using namespace tamis;
using namespace tamis::tests;

// Every line of every fiche of the demo kitchen, of the drafts and of the printed recipes, for every food that may stand in
// for it: the swap is a fiche that can be read, and comes home to the letter.

namespace {

std::vector<std::string> fiches() {
  std::vector<std::string> out;
  for (const char* folder : {"tests/kitchen", "tests/drafts", "tests/against/real", "tests/rules/looks_wrong"}) {
    for (const auto& entry : std::filesystem::recursive_directory_iterator(std::string(TAMIS_SOURCE_DIR) + "/" + folder)) {
      if (entry.path().string().ends_with(".fiche.xml"))
        out.push_back(std::filesystem::relative(entry.path(), TAMIS_SOURCE_DIR).string());
    }
  }
  std::sort(out.begin(), out.end());
  return out;
}

/// "butter-clarified", "egg-yolk+egg-white": what any kind of swap leads to.
std::vector<std::string> may_stand_in(std::string_view from) {
  std::set<std::string> out;
  std::vector<std::string_view> ids;
  for (const food::Food& food : food::foods()) ids.push_back(food.id);
  for (const change::SwapKind* kind : change::swap_kinds()) {
    for (const std::string_view one : ids) {
      if (one != from && kind->fits(from, {&one, 1})) out.insert(std::string(one));
    }
  }
  for (const char* two : {"egg-yolk+egg-white", "egg-yolk-frozen+egg-white-frozen", "cream-double+milk-skimmed",
                          "chocolate-dark-80+sugar-white"}) {
    const std::string pair(two);
    const std::size_t plus = pair.find('+');
    const std::vector<std::string_view> both{std::string_view(pair).substr(0, plus), std::string_view(pair).substr(plus + 1)};
    for (const change::SwapKind* kind : change::swap_kinds()) {
      if (both[0] != from && both[1] != from && kind->fits(from, both)) out.insert(pair);
    }
  }
  return {out.begin(), out.end()};
}

}  // namespace

TEST_CASE("every swap of every line that has an id comes home to the letter") {
  const fiche::Kitchen kitchen;
  std::size_t swaps = 0;
  for (const std::string& path : fiches()) {
    const std::string own = project_file(path);
    const auto document = document_of(own);
    const fiche::Fiche fiche = fiche::read_fiche(*document, kitchen);
    const Result plain = converted(own, wish(fiche.reading.system));
    // A "cup" of nobody's system: no conversion touches such a fiche.
    const bool refuses = plain.xml == own && plain.finding("not-converted") != nullptr;
    for (const fiche::Ingredient& line : fiche.ingredients) {
      if (line.id.empty() || line.food == nullptr || document->get(line.node, fiche::At::was_food) != "") continue;
      for (const std::string& food : may_stand_in(line.food_id)) {
        const std::string words = std::string(line.id) + "=" + food;
        CAPTURE(path, words);
        const auto wishes = change::read_swaps(words);
        REQUIRE(wishes);
        const auto made = change::swap_foods(*document, kitchen, *wishes);
        if (!made) {
          CHECK_FALSE(made.fault().advice.empty());
          continue;
        }
        ++swaps;
        const std::string there = format::write(made->document);
        CHECK(there != own);
        const std::string home = std::string(line.id) + "=" + std::string(line.food_id);
        CHECK((swapped(there, home).xml == own));
        CHECK((converted(there, wish(fiche.reading.system)).xml == plain.xml || refuses));
      }
    }
  }
  CHECK(swaps > 300);
}

TEST_CASE("a swap in JSON comes home as well") {
  const std::string own =
      format::lay_out(*document_of(project_file("tests/change/golden/hazelnut-set-cream.fiche.xml")), fiche::Spelling::json);
  const auto read = [](const std::string& json) {
    auto got = format::read_json(std::make_shared<base::Source>("h.fiche.json", json));
    REQUIRE(got.document != nullptr);
    return got.document;
  };
  const fiche::Kitchen kitchen;
  for (const char* words :
       {"leaf=gelatine-powder:225", "whipped=cream-double:48+milk-whole:3.5", "butter=butter-clarified", "eggs=egg-whole:L"}) {
    CAPTURE(words);
    const auto wishes = change::read_swaps(words);
    REQUIRE(wishes);
    const auto made = change::swap_foods(*read(own), kitchen, *wishes);
    REQUIRE(made);
    const std::string there = format::write(made->document);
    CHECK(there != own);
    const change::Converted home = change::convert(*read(there), kitchen, wish(System::metric));
    CHECK(format::lay_out(*read(format::write(home.document)), fiche::Spelling::json) == own);
  }
}
