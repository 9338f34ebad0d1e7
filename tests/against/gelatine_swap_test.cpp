#include <catch2/catch.hpp>
#include <memory>

#include "core/change/swap.h"
#include "core/fiche/fiche.h"
#include "core/format/format.h"

using namespace tamis;

namespace {

fiche::Kitchen kitchen_set_to(const std::string& rule) {
  const std::string xml = "<kitchen xmlns=\"urn:tamis:fiche:1\" name=\"K\">" + rule + "</kitchen>";
  return fiche::read_kitchen(format::read_xml(std::make_shared<base::Source>("kitchen.xml", xml)).document);
}

/// Grams that stand in for a kilogram, as the swap writes them.
double swapped_from_1_kg(const char* from, const char* to, const fiche::Kitchen& kitchen) {
  const std::string xml =
      "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"f\" lang=\"en\"><title>T</title><component id=\"c\" title=\"C\">"
      "<ingredient id=\"g\" food=\"gelatine-powder\" bloom=\"" +
      std::string(from) + "\">1000 g</ingredient></component></fiche>";
  const auto read = format::read_xml(std::make_shared<base::Source>("f.fiche.xml", xml));
  const auto wishes = change::read_swaps("g=gelatine-powder:" + std::string(to));
  REQUIRE(wishes);
  const auto made = change::swap_foods(*read.document, kitchen, *wishes);
  REQUIRE(made);
  const fiche::Fiche fiche = fiche::read_fiche(made->document, kitchen);
  const fiche::Statement* statement = fiche.statement(fiche.ingredients.at(0).node);
  REQUIRE(statement != nullptr);
  REQUIRE(statement->amount);
  return statement->amount->low_base().approximate();
}

}  // namespace

// Bloom conversion table printed for kitchens (square root of A/B), gate-015 to gate-019 of the reference figures; the
// linear factors are those that other tables print for the same pairs. The exponent 0.5 itself (gate-014): Gelatin Handbook
// (GMIA), C1 x B1^n = C2 x B2^n, from memory.
TEST_CASE("gelatine of another strength goes by the published factors, by the root and in a straight line") {
  struct Row {
    const char* from;
    const char* to;
    double by_root;
    double linear;
  };
  const Row rows[] = {{"200", "100", 1.4142, 2.000},
                      {"220", "160", 1.1726, 1.375},
                      {"120", "240", 0.7071, 0.500},
                      {"180", "240", 0.8660, 0.750},
                      {"260", "200", 1.1402, 1.300}};
  const fiche::Kitchen plain = kitchen_set_to("");
  const fiche::Kitchen linear = kitchen_set_to("<rule id=\"food-swapped\" value=\"linear\"/>");
  constexpr double scales = 5;  // the kitchen's scales and rounding of a kilogram, in g
  for (const Row& row : rows) {
    CAPTURE(row.from, row.to);
    CHECK(swapped_from_1_kg(row.from, row.to, plain) == Approx(1000 * row.by_root).margin(scales));
    CHECK(swapped_from_1_kg(row.from, row.to, linear) == Approx(1000 * row.linear).margin(scales));
  }
}
