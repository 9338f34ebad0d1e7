#include <cmath>
#include <functional>
#include <map>
#include <set>

#include <catch2/catch.hpp>

#include "core/change/scale.h"
#include "core/change/scale_mould.h"
#include "core/food/food.h"
#include "core/format/format.h"
#include "core/physics/size_ratio.h"
#include "tests/csv.h"
#include "tests/shared_files.h"

// Rules of scaling with figures that others have worked out: a scale factor, a dough by its total, areas and volumes of
// moulds, what is left of a purchase. The figures stand here with their source; where the reference table is beside the
// project, they are held to be its own.

namespace tamis::tests {
namespace {

using change::ScaleWish;

const std::string slides = "professional baking lesson slides, conversion factor example";
const std::string worksheet = "baker's percentage worksheet (teaching sheet), problem solving example";
const std::string geometry = "plane and solid geometry, computed";
const std::string refuse = "USDA National Nutrient Database SR28, FOOD_DES file, refuse field";

change::Scaled scale_text(const std::string& inside, const ScaleWish& wish) {
  const std::string xml = "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"f\" lang=\"en\" units=\"metric\"><title>T</title>" +
                          inside + "</fiche>";
  const auto read = format::read_xml(std::make_shared<base::Source>("f.fiche.xml", xml));
  REQUIRE(read.document != nullptr);
  return change::scale(*read.document, {}, fiche::empty_library(), wish);
}

const std::string dough =
    "<component id=\"d\" title=\"Dough\"><ingredient id=\"flour\" food=\"flour-wheat-white\">100 g</ingredient>"
    "<ingredient id=\"water\" food=\"water\">67 g</ingredient><ingredient id=\"salt\" food=\"salt\">2 g</ingredient>"
    "<ingredient id=\"yeast\" food=\"yeast-fresh\">1 g</ingredient><step do=\"mix\">Mix <use of=\"flour\">flour</use>, "
    "<use of=\"water\">water</use>, <use of=\"salt\">salt</use> and <use of=\"yeast\">yeast</use>.</step></component>";

/// 73 pieces of 390 g, from a formula whose parts add up to 170: the factor, by what the flow says the parts make.
double times_of_dough() {
  return scale_text(dough, {ScaleWish::By::yield, "28470 g", ""}).factor.approximate();
}

double factor_of(const std::string& yield, const ScaleWish& wish) {
  return scale_text(yield + "<component id=\"d\" title=\"D\"><ingredient food=\"sugar-white\">100 g</ingredient></component>", wish)
      .factor.approximate();
}

double other_mould(const std::string& own, const std::string& wished) {
  return factor_of("<yield portions=\"8\"><mould " + own + "/></yield>", {ScaleWish::By::mould, wished, ""});
}

change::MouldSize mould(const std::string& text) {
  const auto read = change::read_mould(text, {}, {"en", measure::System::us, 0});
  REQUIRE(read);
  return *read;
}

double edible(const std::string& food, double of) {
  const food::Food* found = food::food_by_id(food);
  REQUIRE(found != nullptr);
  return of * (1 - found->trim_share);
}

constexpr double square_inch = 25.4 * 25.4;

struct Row {
  std::string id;
  double value, tolerance;
  std::string source;
  std::function<double()> answer;
};

const std::vector<Row>& rows() {
  static const std::vector<Row> all = {
      {"scale-001", 28470, 0, worksheet, [] { return times_of_dough() * 170; }},
      {"scale-002", 11220.53, 0.01, worksheet, [] { return times_of_dough() * 67; }},
      {"scale-003", 334.94, 0.01, worksheet, [] { return times_of_dough() * 2; }},
      {"scale-004", 170, 0, worksheet, [] { return 28470 / times_of_dough(); }},
      {"scale-006", 2.25, 0, slides, [] { return factor_of("<yield portions=\"8\"/>", {ScaleWish::By::portions, "18", ""}); }},
      {"scale-007", 1000, 0, slides,
       [] {
         return 20 * scale_text("<component id=\"d\" title=\"D\"><ingredient id=\"flour\" food=\"flour-wheat-white\">100 g"
                                "</ingredient><ingredient food=\"sugar-white\">20 g</ingredient></component>",
                                {ScaleWish::By::ingredient, "5000 g", "flour"})
                         .factor.approximate();
       }},
      {"scale-057", 1100, 1, refuse + ", NDB 11246", [] { return edible("leek", 2500); }},
      {"scale-058", 1600, 1, refuse + ", NDB 11352", [] { return 1200 / edible("potato", 1); }},
      {"scale-059", 1.5625, 0, geometry, [] { return other_mould("shape=\"round\" diameter=\"8 in\"", "round 10 in"); }},
      {"scale-060", 63.617, 0.001, geometry, [] { return area_of(mould("round 9 in"))->approximate() / square_inch; }},
      {"scale-061", 0.5470, 0.0001, geometry,
       [] { return other_mould("shape=\"rectangular\" length=\"13 in\" width=\"9 in\"", "square 8 in"); }},
      {"scale-062", 2093, 0.5, geometry, [] { return volume_of(mould("loaf 23 × 13 × 7 cm"))->approximate(); }},
      {"scale-063", 113.10, 0.01, geometry, [] { return 2 * volume_of(mould("dome 6 cm"))->approximate(); }},
      {"scale-065", 4, 0, geometry,
       [] {
         const auto slab = [](double half) { return physics::Body{{{physics::Shape::slab, half}}}; };
         return std::round(1000 * size_ratio(slab(0.01), slab(0.02), {{1e6, 1e6}, {0.5, 0.5}, {0.5, 0.5}}).high) / 1000;
       }},
      {"scale-067", 0.5, 0, geometry,
       [] { return 1 / other_mould("shape=\"tray\" length=\"18 in\" width=\"13 in\"", "tray 26 × 18 in"); }},
  };
  return all;
}

/// Edible portion in percent: 100 less refuse.
struct Edible {
  const char* id;
  const char* food;
  double percent;
  const char* where;
};
constexpr Edible edibles[] = {
    {"scale-023", "apple", 90, "NDB 09003"},
    {"scale-024", "banana", 64, "NDB 09040"},
    {"scale-025", "grape", 96, "NDB 09132"},
    {"scale-026", "kiwi", 76, "NDB 09148"},
    {"scale-027", "mango", 71, "NDB 09176"},
    {"scale-028", "melon-cantaloupe", 51, "NDB 09181"},
    {"scale-029", "peach", 96, "NDB 09236"},
    {"scale-030", "pineapple", 51, "NDB 09266"},
    {"scale-031", "pomegranate", 56, "NDB 09286"},
    {"scale-032", "rhubarb", 75, "NDB 09307"},
    {"scale-033", "strawberry", 94, "NDB 09316"},
    {"scale-034", "watermelon", 52, "NDB 09326"},
    {"scale-035", "artichoke", 40, "NDB 11007"},
    {"scale-036", "asparagus", 53, "NDB 11011"},
    {"scale-037", "beetroot", 67, "NDB 11080"},
    {"scale-038", "broccoli", 61, "NDB 11090"},
    {"scale-039", "cabbage", 80, "NDB 11109"},
    {"scale-040", "carrot", 89, "NDB 11124"},
    {"scale-041", "cauliflower", 39, "NDB 11135"},
    {"scale-042", "celery", 89, "NDB 11143"},
    {"scale-043", "sweetcorn", 36, "NDB 11167"},
    {"scale-044", "garlic", 87, "NDB 11215"},
    {"scale-045", "leek", 44, "NDB 11246"},
    {"scale-046", "lettuce-iceberg", 95, "NDB 11252"},
    {"scale-047", "onion", 90, "NDB 11282"},
    {"scale-048", "pea-green", 38, "NDB 11304"},
    {"scale-049", "potato", 75, "NDB 11352"},
    {"scale-050", "spinach", 72, "NDB 11457"},
    {"scale-051", "squash-butternut", 84, "NDB 11485"},
    {"scale-052", "tomato", 91, "NDB 11529"},
    {"scale-053", "pepper-bell-red", 82, "NDB 11821"},
    {"scale-054", "fennel", 72, "NDB 11957"},
    {"scale-055", "egg-whole", 88, "NDB 01123"},
    {"scale-056", "chicken", 68, "NDB 05006"},
};

struct Unanswered {
  const char* id;
  const char* reason;
};
constexpr Unanswered unanswered[] = {
    {"scale-005", "the code works with amounts, not with baker's percentages of them"},
    {"scale-008", "hydration is no figure of a scaling"},
    {"scale-009", "hydration is no figure of a scaling"},
    {"scale-010", "the temperature of the water for a dough belongs to physics"},
    {"scale-011", "culinary yields differ from the refuse figures of USDA that the table of foods holds"},
    {"scale-012", "culinary yields differ from the refuse figures of USDA that the table of foods holds"},
    {"scale-013", "culinary yields differ from the refuse figures of USDA that the table of foods holds"},
    {"scale-014", "culinary yields differ from the refuse figures of USDA that the table of foods holds"},
    {"scale-015", "culinary yields differ from the refuse figures of USDA that the table of foods holds"},
    {"scale-016", "culinary yields differ from the refuse figures of USDA that the table of foods holds"},
    {"scale-017", "culinary yields differ from the refuse figures of USDA that the table of foods holds"},
    {"scale-018", "culinary yields differ from the refuse figures of USDA that the table of foods holds"},
    {"scale-019", "culinary yields differ from the refuse figures of USDA that the table of foods holds"},
    {"scale-020", "culinary yields differ from the refuse figures of USDA that the table of foods holds"},
    {"scale-021", "culinary yields differ from the refuse figures of USDA that the table of foods holds"},
    {"scale-022", "culinary yields differ from the refuse figures of USDA that the table of foods holds"},
    {"scale-064", "surface to volume belongs to physics"},
    {"scale-066", "the size of a larger piece is not asked for by a batch"},
};

}  // namespace

TEST_CASE("rules of scaling give the figures that others worked out") {
  for (const Row& row : rows()) {
    CAPTURE(row.id, row.source);
    CHECK(std::abs(row.answer() - row.value) <= row.tolerance + 1e-9 * row.value);
  }
}

TEST_CASE("what is edible of a purchase is what USDA's refuse leaves") {
  for (const Edible& row : edibles) {
    CAPTURE(row.id, row.food, row.where);
    CHECK(std::abs(edible(row.food, 100) - row.percent) < 1e-6);
  }
}

TEST_CASE("the rules of scaling here are those of the reference, and none of its rows is passed over") {
  const auto text = shared_file("reference/rules_of_scaling.csv");
  if (!text) return;
  std::map<std::string, double> own;
  for (const Row& row : rows()) own[row.id] = row.value;
  for (const Edible& row : edibles) own[row.id] = row.percent;
  std::set<std::string> left;
  for (const Unanswered& row : unanswered) {
    CHECK(std::string(row.reason).size() > 10);
    left.insert(row.id);
  }
  for (const CsvRow& row : read_csv(*text)) {
    const std::string id = row.at("id");
    CAPTURE(id);
    CHECK(own.contains(id) != left.contains(id));
    if (own.contains(id)) CHECK(own[id] == Approx(std::strtod(row.at("value").c_str(), nullptr)));
  }
}

}  // namespace tamis::tests
