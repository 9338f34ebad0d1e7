#include "core/tally/cost.h"
#include "tests/tally/tallying.h"

using namespace tamis;
using base::Ratio;
using tests::tally_fiche;
using tests::tally_of;

namespace {

const std::string tart = R"(<yield portions="8"/><component id="c" title="Cream"><yield><loss what="bowl" amount="10 %"/></yield>
<ingredient id="a" food="house-cream" name="cream">500 g</ingredient><ingredient id="q" food="quince" name="quinces" prep="peeled">300 g</ingredient>
<ingredient id="w" food="water" name="water">100 g</ingredient><ingredient id="s" food="salt" name="salt">to taste</ingredient>
<step hands="20 min">Whip the <use of="a">cream</use>, <use of="q">quinces</use>, <use of="w">water</use>, <use of="s">salt</use>.</step></component>)";

tally::Cost cost(const std::string& kitchen, const std::string& inside = tart, const char* day = "") {
  const auto tally = tally_of(tally_fiche(inside), tests::kitchen_with(kitchen));
  return tally::cost_of(tally->makeup, tally->kitchen, "f", day);
}

std::string lines(const tally::Cost& cost) {
  std::string out;
  for (const tally::CostLine& line : cost.foods) {
    out += (out.empty() ? "" : ", ") + line.name + " ";
    out += line.cost ? measure::write_money({*line.cost, cost.currency}, "en") : std::string(tally::open_name(line.open));
  }
  return out;
}

const std::string priced = R"(<food id="house-cream" name="cream" like="cream-35" price="5.40 EUR" pack="1 kg"/>
<food id="quince" name="quinces" like="quince" price="36 EUR" pack="12 kg" trim="40 %"/><labour hour="24 EUR"/>)";

}  // namespace

TEST_CASE("a batch costs its foods as bought and its hands, and nothing is left out in silence", "[tally]") {
  const tally::Cost all = cost(priced);
  // 0.5 kg at 5.40; 300 g of which 40 % were thrown away: 0.5 kg at 3.00; 20 min at 24.00.
  CHECK(lines(all) == "cream 2.70 EUR, quinces 1.50 EUR, water water, salt trace");
  CHECK(all.food == Ratio(42, 10));
  CHECK(all.hands == Ratio(8));
  CHECK(all.batch == Ratio(122, 10));
  CHECK(all.portion == Ratio(122, 80));
  CHECK(all.left_over == Ratio(0));
  CHECK(all.complete());
  const tally::Cost some = cost(R"(<food id="house-cream" name="cream" like="cream-35" price="5.40 EUR" pack="1 kg"/>)");
  CHECK(lines(some) == "cream 2.70 EUR, quinces no_price, water water, salt trace");
  // 300 g of quince, more as bought: the table knows what peeling takes off.
  CHECK(some.unpriced_g == Approx(300 / (1 - food::food_by_id("quince")->trim_share)));
  CHECK(some.all_g == Approx(500 + some.unpriced_g));
  CHECK(!some.hour_known);
  CHECK(!some.complete());
}

TEST_CASE("packs are masses, volumes or pieces", "[tally]") {
  const auto of = [](const std::string& food, const std::string& like, const std::string& price) {
    return lines(cost("<food id=\"x\" like=\"" + like + "\" " + price + "/>",
                      "<component id=\"c\" title=\"C\"><ingredient id=\"a\" food=\"x\" name=\"" + food + "\">500 g</ingredient><step>Mix <use of=\"a\">it</use>.</step></component>"));
  };
  CHECK(of("flour", "flour-wheat-white", "price=\"16 EUR\" pack=\"16 kg\"") == "flour 0.50 EUR");
  CHECK(of("water", "water", "price=\"0.90 EUR\" pack=\"1 l\"") == "water 0.45 EUR");
  CHECK(of("eggs", "egg-whole", "price=\"6 EUR\" pack=\"30\" piece=\"50 g\"") == "eggs 2.00 EUR");
  CHECK(of("flour", "flour-wheat-white", "price=\"16 EUR\"") == "flour no_pack");
}

TEST_CASE("another currency is said, not added up", "[tally]") {
  const tally::Cost mixed = cost(R"(<food id="house-cream" name="cream" like="cream-35" price="5.40 EUR" pack="1 kg"/>
<food id="quince" name="quinces" like="quince" price="36 GBP" pack="12 kg"/><labour hour="24 GBP"/>)");
  CHECK(lines(mixed) == "cream 2.70 EUR, quinces other_currency, water water, salt trace");
  CHECK(mixed.currency == "EUR");
  CHECK(mixed.food == Ratio(27, 10));
  CHECK(mixed.hands == Ratio(0));
  CHECK(!mixed.hour_known);
}

TEST_CASE("a price of another day is another cost", "[tally]") {
  const std::string dated = R"(<food id="house-cream" name="cream" like="cream-35"><bought since="2026-01-01" price="5 EUR" pack="1 kg"/><bought since="2026-06-01" price="6 EUR" pack="1 kg"/></food>)";
  CHECK(cost(dated, tart, "2026-05-31").food == Ratio(5, 2));
  CHECK(cost(dated, tart, "2026-06-01").food == Ratio(3));
  CHECK(cost(dated, tart, "").food == Ratio(3));
  CHECK(cost(dated, tart, "2025-06-01").food == Ratio(0));
}

TEST_CASE("a share of the price is of the price without its tax", "[tally]") {
  const tally::Cost sold = cost(priced + R"(<packaging id="box" name="card box" price="20 EUR" pack="100"/>
<sale fiche="f" price="6.60 EUR" tax="10 %" packaging="box" aim="25 %"/>)");
  CHECK(sold.packed == Ratio(16, 10));  // eight boxes
  CHECK(sold.batch == Ratio(138, 10));
  CHECK(sold.net == Ratio(6));
  CHECK(sold.food_share == Ratio(42, 480));
  CHECK(sold.share == Ratio(138, 480));
  CHECK(sold.aim == Ratio(1, 4));
  const tally::Cost unknown = cost(priced + R"(<sale fiche="f" price="6.60 EUR" packaging="crate"/>)");
  CHECK(unknown.net == Ratio(33, 5));
  CHECK(!unknown.complete());
}

TEST_CASE("what no portion gets is costed apart, and parts of one purchase are bought once", "[tally]") {
  const tally::Cost left = cost(R"(<food id="butter-unsalted" name="butter" like="butter-unsalted" price="8 EUR" pack="1 kg"/>)",
                                R"(<component id="c" title="C"><ingredient id="a" food="butter-unsalted" name="butter">500 g</ingredient>
<step makes="x">Melt the <use of="a">butter</use>.</step><step>Take <use of="x" take="375 g">butter</use>.</step></component>)");
  CHECK(left.food == Ratio(4));
  CHECK(left.left_over == Ratio(1));
  const tally::Cost eggs = cost(R"(<food id="egg-whole" name="eggs" like="egg-whole" price="9 EUR" pack="1 kg"/>)",
                                R"(<component id="c" title="C"><ingredient id="e" food="egg-whole" name="eggs">500 g<part id="y" food="egg-yolk" share="1/3"/><part id="w" food="egg-white" share="2/3"/></ingredient>
<step>Whisk the <use of="y">yolks</use> and <use of="w">whites</use>.</step></component>)");
  CHECK(lines(eggs) == "eggs 4.50 EUR");
  CHECK(eggs.left_over < Ratio(1, 1000));
}

TEST_CASE("the components of the demo tart add up to its batch", "[tally]") {
  const auto tally = tests::demo_tally("desserts/damson-almond-tart");
  const tally::Cost all = tally::cost_of(tally->makeup, tally->kitchen, tally->fiche.id, "");
  Ratio food;
  Ratio hands;
  for (const tally::Cost::Of& of : all.components) {
    food = food + of.food;
    hands = hands + of.hands;
  }
  CHECK(food == all.food);
  CHECK(hands == all.hands);
}
