#include <catch2/catch.hpp>

#include "core/fiche/kitchen.h"
#include "core/food/allergen_bits.h"
#include "core/format/format.h"

using namespace tamis;

namespace {

fiche::Kitchen kitchen(const std::string& inner) {
  format::Read read = format::read(std::make_shared<const base::Source>(
      "kitchen.xml", "<kitchen xmlns=\"urn:tamis:fiche:1\" name=\"Ferry Steps\">" + inner + "</kitchen>"));
  REQUIRE(read.document);
  return fiche::read_kitchen(read.document);
}

}  // namespace

TEST_CASE("of the prices of a food the one counts that had begun on the day", "[fiche]") {
  const fiche::Kitchen house = kitchen(R"(<food id="f" name="F" price="1.10 EUR" pack="1 kg">
    <bought since="2026-03-01" price="1.30 EUR" pack="1 kg"/><bought since="2026-01-01" price="1.20 EUR" pack="500 g"/></food>)");
  const auto& prices = house.own_food("f")->prices;
  const auto on = [&](const char* day) { return measure::write_money(fiche::price_on(prices, day)->money, "en"); };
  CHECK(on("2025-12-31") == "1.10 EUR");
  CHECK(on("2026-01-01") == "1.20 EUR");
  CHECK(on("2026-02-28") == "1.20 EUR");
  CHECK(on("2026-03-01") == "1.30 EUR");
  CHECK(on("") == "1.30 EUR");
  CHECK(fiche::price_on({}, "") == nullptr);
  const fiche::Kitchen later = kitchen(R"(<food id="f" name="F" price="1.10 EUR" pack="1 kg" since="2026-03-01"/>)");
  CHECK(fiche::price_on(later.own_food("f")->prices, "2026-02-01") == nullptr);
}

TEST_CASE("labour, packaging, sales, cross-contact and trim are read", "[fiche]") {
  const fiche::Kitchen house = kitchen(R"(<labour hour="24.50 EUR" since="2026-01-01"/>
<packaging id="box" name="card box" price="31 EUR" pack="100"/><sale fiche="tart" price="4,80 EUR" tax="10 %" packaging="box label" aim="28 %"/>
<cross-contact may-contain="nuts sesame" where="one mixer"/><food id="f" name="F" like="quince" trim="40 %"/>)");
  CHECK(measure::write_money(house.labour.front().money, "fr") == "24,50 EUR");
  CHECK(house.packaging.front().price.pack->low_base() == base::Ratio(100));
  REQUIRE(house.sale_of("tart") != nullptr);
  CHECK(house.sale_of("tart")->price.amount == base::Ratio(24, 5));
  CHECK(house.sale_of("tart")->tax == base::Ratio(1, 10));
  CHECK(house.sale_of("tart")->aim == base::Ratio(7, 25));
  CHECK(house.sale_of("tart")->packaging == std::vector<std::string>{"box", "label"});
  CHECK(house.sale_of("other") == nullptr);
  CHECK(house.cross_contacts.front().may_contain == (food::allergen::nuts | food::allergen::sesame));
  CHECK(house.own_food("f")->food.trim_share == 0.4);
}

TEST_CASE("money that is none is not read", "[measure]") {
  for (const char* text : {"", "EUR", "12.50", "12.50 eur", "-1 EUR", "1 1/2 EUR", "12.50 EURO", "1e3 EUR", ". EUR"}) {
    CAPTURE(text);
    CHECK(!measure::read_money(text));
  }
  CHECK(measure::write_money({base::Ratio(1, 200), "EUR"}, "en") == "0.01 EUR");
  CHECK(measure::write_money({base::Ratio(-5, 4), "EUR"}, "en") == "-1.25 EUR");
}
