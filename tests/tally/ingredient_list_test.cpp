#include "core/tally/ingredient_list.h"

#include <cmath>

#include "core/food/allergen_bits.h"
#include "core/tally/allergen_table.h"
#include "tests/tally/tallying.h"

using namespace tamis;
using tally::Law;
using tests::tally_fiche;
using tests::tally_of;
namespace allergen = food::allergen;

namespace {

std::string text(const std::vector<tally::Run>& runs) {
  std::string out;
  for (const tally::Run& run : runs) out += run.marked ? "*" + run.text + "*" : run.text;
  return out;
}

std::string text(const std::vector<tally::Listed>& items) {
  std::string out;
  for (const tally::Listed& item : items) {
    out += (out.empty() ? "" : ", ") + text(item.runs);
    if (item.percent) out += " " + std::to_string(std::lround(*item.percent)) + "%";
    if (item.small) out += " ~";
    if (!item.weighed) out += " ?";
    if (!item.parts.empty()) out += " [" + text(item.parts) + "]";
  }
  return out;
}

std::string list(const tests::Tallying& tally, tally::ListOptions options = {}) {
  const tally::IngredientList found = tally::ingredient_list(tally.makeup, tally.fiche, options);
  return text(found.items) + (found.water_left_out ? " (water left out)" : "");
}

std::string one(const std::string& title, const std::string& inside) {
  return "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"f\" lang=\"en\" units=\"metric\"><title>" + title +
         "</title><component id=\"c\" title=\"C\">" + inside + "</component></fiche>";
}

std::string lines(std::initializer_list<std::pair<const char*, const char*>> foods, const std::string& step = "<step>") {
  std::string out;
  std::string uses;
  int number = 0;
  for (const auto& [attributes, amount] : foods) {
    const std::string id = "i" + std::to_string(number++);
    out += "<ingredient id=\"" + id + "\" " + attributes + ">" + amount + "</ingredient>";
    uses += " <use of=\"" + id + "\">it</use>,";
  }
  return out + step + "Mix" + uses + " well.</step>";
}

}  // namespace

// Regulation (EU) 1169/2011, Articles 18 and 21, Annex VII A 6.
TEST_CASE("ingredients stand in descending order, one food once, with their allergens set apart", "[tally]") {
  const auto cake = tally_of(one("Slice", lines({{"food=\"sugar-white\" name=\"caster sugar\"", "100 g"},
                                                 {"food=\"flour-wheat-white\" name=\"flour\"", "250 g"},
                                                 {"food=\"butter-unsalted\" name=\"butter\"", "150 g"},
                                                 {"food=\"sugar-white\" name=\"sugar, to dust\"", "80 g"},
                                                 {"food=\"hazelnut-ground\" name=\"nuts\"", "60 g"},
                                                 {"food=\"egg-yolk\" name=\"yolks\"", "40 g"},
                                                 {"food=\"salt\" name=\"salt\"", "3 g"},
                                                 {"food=\"pepper-black\" name=\"pepper\"", "1 pinch"}})));
  CHECK(list(*cake) == "plain flour (*wheat*), granulated sugar, unsalted butter (*milk*), ground *hazelnuts*, *egg* yolk, "
                       "table salt ~, ground black pepper ~");
  CHECK(list(*cake, {Law::us, false, "en"}) ==
        "plain flour, granulated sugar, unsalted butter, ground hazelnuts, egg yolk, table salt ~, ground black pepper ~");
  CHECK(list(*cake, {Law::eu, false, "fr"}) == "farine de *blé*, sucre semoule, beurre doux (*lait*), poudre de *noisettes*, jaune d'*œuf*, "
                                               "sel fin ~, poivre noir moulu ~");
  const tally::IngredientList us = tally::ingredient_list(cake->makeup, cake->fiche, {Law::us, false, "en"});
  CHECK(tally::us_contains(us) == std::vector<std::string>{"egg", "milk", "tree nuts (hazelnut)", "wheat"});
}

// Annex VII E: the supplier's list, word for word.
TEST_CASE("a supplier's ingredient list stands in brackets as it was written", "[tally]") {
  const auto cake = tally_of(one("Slice", lines({{"food=\"mill\"", "250 g"}, {"food=\"leaf\"", "10 g"}})),
                             tests::kitchen_with(R"(<food id="mill" name="pastry flour" like="flour-wheat-white" ingredients="WHEAT flour, calcium carbonate, iron" contains="gluten wheat" specified="2026-03-02"/>
<food id="leaf" name="gelatine leaf" like="gelatine-leaf"/>)"));
  CHECK(list(*cake) == "pastry flour (*WHEAT* flour, calcium carbonate, iron), gelatine leaf");
  CHECK(tally::assumed_foods(cake->makeup, cake->kitchen) == std::vector<std::string>{"gelatine leaf"});
}

// Annex VII A 1.
TEST_CASE("water counts as what is left of it, and is left out up to a twentieth", "[tally]") {
  const auto with = [](const char* water, const std::string& step) {
    return list(*tally_of(one("Slice", lines({{"food=\"water\"", water}, {"food=\"sugar-white\"", "100 g"}, {"food=\"apple\"", "300 g"}}, step))));
  };
  CHECK(with("400 g", "<step>") == "water, apples, granulated sugar");
  CHECK(with("400 g", "<step reduce-to=\"450 g\">") == "apples, granulated sugar, water");
  CHECK(with("400 g", "<step reduce-to=\"400 g\">") == "apples, granulated sugar (water left out)");
  CHECK(with("21 g", "<step>") == "apples, granulated sugar (water left out)");  // 21 of 421 g
  CHECK(with("22 g", "<step>") == "apples, granulated sugar, water");             // 22 of 422 g
  const auto meat = tally_of(one("Stew", lines({{"food=\"water\"", "10 g"}, {"food=\"beef-stewing\"", "500 g"}})));
  CHECK(list(*meat).ends_with("water ~"));
  const auto us = tally_of(one("Slice", lines({{"food=\"water\"", "10 g"}, {"food=\"sugar-white\"", "500 g"}})));
  CHECK(list(*us, {Law::us, false, "en"}) == "granulated sugar, water ~");
}

// Article 22 and Annex VIII: of what goes in, in a hundred of what is made.
TEST_CASE("what the name draws the eye to has its share beside it", "[tally]") {
  const auto percent = [](const std::string& title, const char* attributes, const std::string& step = "<step>") {
    return list(*tally_of(one(title, lines({{attributes, "300 g"}, {"food=\"sugar-white\"", "100 g"}, {"food=\"butter-unsalted\"", "200 g"}}, step))));
  };
  CHECK(percent("Damson spread", "food=\"plum\" name=\"damsons\"").find("50%") != std::string::npos);
  CHECK(percent("Damson spread", "food=\"plum\" name=\"damsons\"", "<step reduce-to=\"400 g\">").find("75%") != std::string::npos);
  CHECK(percent("Quince and peach spread", "food=\"quince\" name=\"quinces\"").find("50%") != std::string::npos);
  CHECK(percent("Quince and peach spread", "food=\"peach\" name=\"peaches\"").find("50%") != std::string::npos);
  CHECK(percent("Cherry spread", "food=\"cherry-sour\" name=\"cherries\"").find("50%") != std::string::npos);
  CHECK(percent("Spread", "food=\"plum\" name=\"damsons\"").find('%') == std::string::npos);
  CHECK(percent("Spread", "food=\"plum\" name=\"damsons\" emphasised=\"yes\"").find("50%") != std::string::npos);
  CHECK(percent("Damson spread", "food=\"plum\" name=\"damsons\" emphasised=\"no\"").find('%') == std::string::npos);
  CHECK(percent("Sweet pastry", "food=\"flour-wheat-white\" name=\"pastry flour\"").find('%') == std::string::npos);
  CHECK(percent("Bay spread", "food=\"bay-leaf\" name=\"bay\"").find('%') == std::string::npos);  // it only flavours
}

TEST_CASE("components stand as compound ingredients when that is asked for", "[tally]") {
  const auto two = tally_of(tally_fiche(R"(<component id="a" title="Crumb"><ingredient id="f" food="flour-wheat-white">200 g</ingredient><ingredient id="b" food="butter-unsalted">100 g</ingredient>
<step makes="x">Rub <use of="f">flour</use> and <use of="b">butter</use>.</step></component><component id="s" title="Cream"><ingredient id="c" food="cream-35">500 g</ingredient>
<step>Whip <use of="c">cream</use>, strew with <use of="x">crumb</use>.</step></component>)"));
  CHECK(list(*two, {Law::eu, true, "en"}) == "Cream [whipping cream (*milk*)], Crumb [plain flour (*wheat*), unsalted butter (*milk*)]");
}

TEST_CASE("what is taken out again is not in the list, and the tin's butter is for its milk", "[tally]") {
  const auto infused = tally_of(one("Infusion", R"(<ingredient id="m" food="milk-whole">1 kg</ingredient><ingredient id="b" food="bay-leaf">4</ingredient>
<ingredient id="t" food="butter-unsalted" purpose="tin">10 g</ingredient><ingredient id="o" food="oil-olive" purpose="tin">10 g</ingredient><ingredient id="w" food="milk-whole" purpose="bath">1 l</ingredient>
<step removes="b">Infuse the <use of="m">milk</use> with <use of="b">bay</use>.</step>)"));
  CHECK(list(*infused) == "whole *milk*, unsalted butter (*milk*) ~ ?");
}

TEST_CASE("words of allergens are found as words", "[tally]") {
  const auto marked = [](const char* name, food::Allergens bits) {
    const auto runs = tally::mark_allergens(name, bits, "en");
    return text(runs) + (bits == 0 ? "" : " -");
  };
  CHECK(marked("EGGS, free range", allergen::egg) == "*EGGS*, free range");
  CHECK(marked("eggplant", allergen::egg) == "eggplant -");
  CHECK(marked("buttermilk powder", allergen::milk) == "buttermilk powder -");
  CHECK(marked("almond and walnut paste", allergen::nuts) == "*almond* and *walnut* paste");
  CHECK(marked("celeriac", allergen::celery) == "*celeriac*");
  CHECK(tally::word_for(allergen::gluten, "beer, of barley; some of wheat too", "en") == "barley");
  CHECK(tally::word_for(allergen::milk, "butter", "fr") == "lait");
  CHECK(tally::us_name(allergen::fish, "salmon fillet|cod") == "fish (cod, salmon)");
  CHECK(tally::us_name(allergen::nuts, "praline") == "tree nuts");
  for (const food::AllergenName& name : food::allergen_names()) CHECK(!tally::word_for(name.bit, "", "en").empty());
}

TEST_CASE("the table of allergens tells each with its sources, and what is stated", "[tally]") {
  const auto dish = tally_of(tally_fiche(R"(<component id="c" title="C"><ingredient food="mill">250 g</ingredient><ingredient food="chocolate-dark-70" name="chocolate">10 g</ingredient>
<ingredient food="walnut" name="walnuts" optional="yes">10 g</ingredient><ingredient name="spice mix">2 g</ingredient></component><allergens contains="gluten celery" may-contain="sesame"/>)"),
                             tests::kitchen_with(R"(<food id="mill" name="pastry flour" like="flour-wheat-white" contains="gluten wheat" may-contain="soy" specified="2026-03-02"/><cross-contact may-contain="nuts" where="one mixer"/>)"));
  const tally::AllergenTable table = tally::allergen_table(*dish->document, dish->kitchen, dish->library, "en");
  std::string said;
  for (const tally::AllergenFound& found : table.found) {
    said += std::string(found.name->id) + " " + std::string(tally::level_name(found.level)) + (found.stated == tally::AllergenFound::Stated::contains ? " stated" : found.stated == tally::AllergenFound::Stated::may ? " stated may" : "") + ":";
    for (const auto& source : found.sources) said += " " + source.food + (source.specified.empty() ? "" : " " + source.specified);
    said += "\n";
  }
  CHECK(said ==
        "gluten contains stated: pastry flour 2026-03-02\n"
        "soy assumed: chocolate pastry flour 2026-03-02\n"
        "nuts option: walnuts one mixer\n"
        "celery none stated:\n"
        "sesame none stated may:\n"
        "wheat contains stated: pastry flour 2026-03-02\n");
  CHECK(table.unknown == std::vector<std::string>{"spice mix"});
}
