#include "core/fiche/kitchen.h"

#include <catch2/catch.hpp>

#include "core/fiche/fiche.h"
#include "tests/fiche/read.h"

using namespace tamis;
using tests::document_of;

namespace {

fiche::Kitchen kitchen_with(const std::string& inside) {
  return fiche::read_kitchen(document_of("<kitchen xmlns=\"urn:tamis:fiche:1\" name=\"Test\" lang=\"en\" units=\"us\">" +
                                             inside + "</kitchen>",
                                         "kitchen.xml"));
}

}  // namespace

TEST_CASE("an oven's dial step is a difference, in the dial's own degrees", "[kitchen]") {
  const fiche::Kitchen kitchen =
      kitchen_with("<oven id=\"o\" mode=\"fan\" least=\"150 °F\" most=\"500 °F\" step=\"25 °F\" offset=\"-5 °C\"/>");
  REQUIRE(kitchen.ovens.size() == 1);
  CHECK(kitchen.ovens[0].most_c == base::Ratio(260));
  CHECK(kitchen.ovens[0].step_c == base::Ratio(125, 9));
  CHECK(kitchen.ovens[0].offset_c == base::Ratio(-5));
  CHECK(kitchen.tools.oven_step_f == base::Ratio(25));
}

TEST_CASE("stated scales and spoons take the place of the usual ones", "[kitchen]") {
  const fiche::Kitchen kitchen = kitchen_with(
      "<scales reads=\"1 g\" most=\"5 kg\"/><scales reads=\"0.1 g\" most=\"500 g\"/>"
      "<spoons>1 tbsp; 1/2 tsp</spoons>");
  REQUIRE(kitchen.tools.scales.size() == 2);
  CHECK(kitchen.tools.scales[0].reads_g == base::Ratio(1, 10));
  CHECK(kitchen.tools.scales[1].most_g == base::Ratio(5000));
  REQUIRE(kitchen.tools.spoons.size() == 2);
  CHECK(kitchen.tools.spoons[0].unit->id == "tsp-us");
}

TEST_CASE("a house's word has the house's meaning", "[kitchen]") {
  const fiche::Kitchen kitchen = kitchen_with("<means word=\"Overnight\" time=\"10 to 16 h\"/>");
  const auto found = kitchen.meanings.find("overnight");
  REQUIRE(found != kitchen.meanings.end());
  CHECK(found->second.low_base() == base::Ratio(36000));
}

TEST_CASE("a house's food keeps what it does not state from the food it is like", "[kitchen]") {
  const fiche::Kitchen kitchen = kitchen_with(
      "<food id=\"our-flour\" name=\"our flour\" like=\"flour-wheat-white\" density=\"1 cup = 130 g\"/>");
  const food::Food* ours = kitchen.find_food("our-flour");
  const food::Food* table = food::food_by_id("flour-wheat-white");
  REQUIRE(ours != nullptr);
  REQUIRE(table != nullptr);
  CHECK(ours->english == "our flour");
  CHECK(ours->per_100_g.protein == table->per_100_g.protein);
  const auto density = food::density_of(*ours);
  REQUIRE(density);
  CHECK(density->grams_per_ml.approximate() == Approx(130 / 236.5882365));
  CHECK(kitchen.find_food("flour-wheat-white") == table);
  CHECK(kitchen.find_food("no-such-food") == nullptr);
}

TEST_CASE("a supplier's specification settles the allergens; without one they are added to the assumed", "[kitchen]") {
  const fiche::Kitchen kitchen = kitchen_with(
      "<food id=\"dark\" like=\"chocolate-dark-64\" contains=\"soy\" specified=\"2026-01-01\"/>"
      "<food id=\"nutty\" like=\"chocolate-dark-64\" contains=\"nuts\"/>");
  std::vector<std::string_view> unknown;
  CHECK(kitchen.find_food("dark")->allergens == food::read_allergens("soy", unknown));
  const food::Allergens table = food::food_by_id("chocolate-dark-64")->allergens;
  CHECK(kitchen.find_food("nutty")->allergens == (table | food::read_allergens("nuts", unknown)));
}

TEST_CASE("severities and rule values are read", "[kitchen]") {
  const fiche::Kitchen kitchen =
      kitchen_with("<rule id=\"oven-mode-not-stated\" severity=\"off\"/><rule id=\"other\" severity=\"error\" value=\"3\"/>");
  CHECK(kitchen.severities.at("oven-mode-not-stated") == base::Severity::off);
  CHECK(kitchen.severities.at("other") == base::Severity::error);
  CHECK(kitchen.rule_values.at("other") == "3");
}

TEST_CASE("a house's verb means what the trade's does", "[kitchen]") {
  const fiche::Kitchen kitchen = kitchen_with("<verb word=\"buzz\" like=\"puree\"/>");
  CHECK(kitchen.trade_verb("buzz") == "puree");
  CHECK(kitchen.trade_verb("fold") == "fold");
  const auto document = document_of(
      "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"f\" lang=\"en\"><title>F</title><component id=\"c\" title=\"C\">"
      "<step do=\"buzz strain\">Buzz.</step></component></fiche>",
      "f.fiche.xml");
  CHECK(fiche::read_fiche(*document, kitchen).steps.at(0).actions == std::vector<std::string_view>{"puree", "strain"});
}

TEST_CASE("a plugin's foods, meanings and verbs come behind the kitchen's own", "[kitchen]") {
  fiche::Kitchen kitchen = kitchen_with(
      "<food id=\"our-flour\" name=\"our flour\" like=\"flour-wheat-white\"/><means word=\"overnight\" time=\"10 h\"/>"
      "<verb word=\"buzz\" like=\"puree\"/>");
  fiche::add_to_kitchen(kitchen, *document_of("<manifest xmlns=\"urn:tamis:fiche:1\" id=\"p\" version=\"1\" api=\"1\">"
                                              "<food id=\"our-flour\" name=\"theirs\"/><food id=\"sumac\" name=\"sumac\" piece=\"2 g\"/>"
                                              "<means word=\"overnight\" time=\"12 h\"/><verb word=\"buzz\" like=\"chop\"/>"
                                              "<verb word=\"mount\" like=\"whip\"/></manifest>",
                                              "plugin.xml"));
  CHECK(kitchen.find_food("our-flour")->english == "our flour");
  REQUIRE(kitchen.own_food("sumac") != nullptr);
  CHECK(kitchen.own_food("sumac")->node == fiche::none);
  CHECK(kitchen.own_food("sumac")->food.measures.size() == 1);
  CHECK(kitchen.meanings.at("overnight").low_base() == base::Ratio(36000));
  CHECK(kitchen.trade_verb("buzz") == "puree");
  CHECK(kitchen.trade_verb("mount") == "whip");
}
