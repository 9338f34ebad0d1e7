#include "core/fiche/fiche.h"

#include <catch2/catch.hpp>

#include "tests/fiche/read.h"

using namespace tamis;
using tests::document_of;
using tests::fiche_with;

namespace {

const fiche::Kitchen& bare_kitchen() {
  static const fiche::Kitchen kitchen;
  return kitchen;
}

}  // namespace

TEST_CASE("an ingredient's text, second statement and kept figure are read once each", "[fiche]") {
  const auto document = document_of(
      fiche_with("<ingredient id=\"flour\" food=\"flour-wheat-white\" also=\"2 cups\" was=\"9 oz\">255 g</ingredient>"));
  const fiche::Fiche read = fiche::read_fiche(*document, bare_kitchen());
  REQUIRE(read.ingredients.size() == 1);
  const fiche::Ingredient& flour = read.ingredients[0];
  CHECK(flour.id == "flour");
  REQUIRE(flour.food != nullptr);
  CHECK(flour.food->id == "flour-wheat-white");
  const auto at = [&](int i) { return read.statements.at(static_cast<std::size_t>(i)); };
  CHECK(at(flour.amount).text == "255 g");
  CHECK(at(flour.amount).amount->low_base() == base::Ratio(255));
  CHECK(at(flour.also).amount->low_base() == base::Ratio(2) * base::Ratio::parse("236.5882365").value());
  CHECK(at(flour.was).text == "9 oz");
  CHECK(read.statement(flour.node, fiche::At::also) != nullptr);
  CHECK(read.statement(flour.node, fiche::At::purchase) == nullptr);
}

TEST_CASE("a kept figure is read in the system it was written in", "[fiche]") {
  const auto document = document_of(fiche_with("<ingredient food=\"milk-whole\" was=\"1 cup\">237 ml</ingredient>",
                                               "lang=\"en\" units=\"metric\" was-units=\"us\""));
  const fiche::Fiche read = fiche::read_fiche(*document, bare_kitchen());
  const auto* was = read.statement(read.ingredients[0].node, fiche::At::was);
  REQUIRE(was != nullptr);
  REQUIRE(was->amount);
  CHECK(was->amount->low.front().unit->id == "cup-us");
}

TEST_CASE("a refusal marks the bytes at fault, past fractions and entities", "[fiche]") {
  const auto document = document_of(fiche_with("<ingredient> &#xBD; kgg </ingredient>"));
  const fiche::Fiche read = fiche::read_fiche(*document, bare_kitchen());
  REQUIRE(read.statements.size() == 1);
  REQUIRE(read.statements[0].fault);
  CHECK(document->source().slice(read.statements[0].fault->where) == "kgg");
  CHECK(document->source().slice(read.statements[0].where) == "&#xBD; kgg");
}

TEST_CASE("steps know their uses, actions and results; ids cover results", "[fiche]") {
  const auto document = document_of(
      fiche_with("<ingredient id=\"milk\">1 l</ingredient>"
                 "<step do=\"boil strain\" makes=\"base skin\">Boil the <use of=\"milk\">milk</use>.</step>"));
  const fiche::Fiche read = fiche::read_fiche(*document, bare_kitchen());
  REQUIRE(read.steps.size() == 1);
  CHECK(read.steps[0].actions == std::vector<std::string_view>{"boil", "strain"});
  CHECK(read.steps[0].makes == std::vector<std::string_view>{"base", "skin"});
  CHECK(read.steps[0].uses.size() == 1);
  CHECK(read.ids.count("skin") == 1);
  CHECK(read.ids.count("milk") == 1);
  CHECK(read.ids.count("c") == 1);
  CHECK(read.ids.count("f") == 0);  // the file's own name
}

TEST_CASE("language, units and decimal sign come from the kitchen where the fiche is silent", "[fiche]") {
  const auto kitchen_document = document_of(
      "<kitchen xmlns=\"urn:tamis:fiche:1\" name=\"K\" lang=\"fr\" units=\"metric\"/>", "kitchen.xml");
  const fiche::Kitchen kitchen = fiche::read_kitchen(kitchen_document);
  const auto document = document_of(fiche_with("<ingredient>1,5 kg</ingredient>", ""));
  const fiche::Fiche read = fiche::read_fiche(*document, kitchen);
  CHECK(read.language == "fr");
  REQUIRE(read.statements.size() == 1);
  REQUIRE(read.statements[0].amount);
  CHECK(read.statements[0].amount->low_base() == base::Ratio(1500));
}
