#include <catch2/catch.hpp>
#include <set>
#include <string>
#include <vector>

#include "core/food/allergen_bits.h"
#include "core/food/food.h"

using namespace tamis;
using food::Allergens;
using food::Food;
using food::Role;
namespace allergen = food::allergen;

namespace {

/// The text has a word that begins so.
bool has(std::string_view text, std::string_view word) {
  for (std::size_t at = text.find(word); at != std::string_view::npos; at = text.find(word, at + 1)) {
    if (at == 0 || text[at - 1] == ' ' || text[at - 1] == '|' || text[at - 1] == '-') return true;
  }
  return false;
}

bool says(const Food& food, std::string_view word) { return has(food.english, word) || has(food.id, word); }

}  // namespace

TEST_CASE("the lists are the fourteen of the EU and the nine of the US", "[allergens]") {
  std::size_t eu = 0;
  std::size_t us = 0;
  Allergens bits = 0;
  for (const auto& name : food::allergen_names()) {
    eu += name.eu ? 1 : 0;
    us += name.us ? 1 : 0;
    CHECK((bits & name.bit) == 0);
    bits |= name.bit;
    CHECK_FALSE(name.source.empty());
    CHECK_FALSE(name.french.empty());
  }
  CHECK(eu == 14);
  CHECK(us == 9);
}

TEST_CASE("a list of allergens is read word by word", "[allergens]") {
  std::vector<std::string_view> unknown;
  CHECK(food::read_allergens("milk egg nuts", unknown) == (allergen::milk | allergen::egg | allergen::nuts));
  CHECK(food::read_allergens(" milk,\n egg ", unknown) == (allergen::milk | allergen::egg));
  CHECK(food::read_allergens("", unknown) == 0);
  CHECK(unknown.empty());
  CHECK(food::read_allergens("milk eggs Milk", unknown) == allergen::milk);
  REQUIRE(unknown.size() == 2);
  CHECK(unknown[0] == "eggs");
  CHECK(unknown[1] == "Milk");
}

TEST_CASE("foods carry the allergens of what they are", "[allergens][table]") {
  // Foods of a role that carry none of its allergens, each for the reason given in its own allergen_source.
  const std::set<std::string> none = {"chestnut",
                                      "chestnut-puree",
                                      "coconut-fresh",
                                      "sunflower-seed",
                                      "linseed",
                                      "pumpkin-seed",
                                      "poppy-seed",
                                      "coconut-desiccated",
                                      "coconut-flaked-sweetened",
                                      "coconut-shredded-sweetened"};
  for (const Food& food : food::foods()) {
    CAPTURE(food.id, food.allergens);
    switch (food.role) {
      case Role::dairy:
        CHECK((food.allergens & allergen::milk) != 0);
        break;
      case Role::egg:
        CHECK((food.allergens & allergen::egg) != 0);
        break;
      case Role::nut:
        CHECK(((food.allergens & (allergen::nuts | allergen::peanut | allergen::sesame)) != 0) !=
              (none.count(std::string(food.id)) == 1));
        break;
      case Role::fish:
        CHECK((food.allergens & (allergen::fish | allergen::crustaceans | allergen::molluscs)) != 0);
        break;
      default:
        break;
    }
    if ((food.allergens & allergen::wheat) != 0) CHECK((food.allergens & allergen::gluten) != 0);
  }
}

TEST_CASE("a word in the name of a food brings its allergen", "[allergens][table]") {
  struct Word {
    const char* word;
    Allergens bits;
    std::set<std::string> not_for;  ///< foods that bear the word and not the allergen
  };
  const Word words[] = {
      {"wheat", allergen::gluten | allergen::wheat, {}},
      {"barley", allergen::gluten, {}},
      {"rye", allergen::gluten, {}},
      {"oat", allergen::gluten, {}},
      {"spelt", allergen::gluten | allergen::wheat, {}},
      {"semolina", allergen::gluten | allergen::wheat, {}},
      {"bread", allergen::gluten, {"gherkin-sweet"}},
      {"pasta", allergen::gluten | allergen::wheat, {}},
      {"butter",
       allergen::milk,
       {"butter-cocoa", "peanut-butter", "paste-hazelnut", "tahini", "lettuce-butterhead", "squash-butternut",
        "gherkin-sweet"}},
      {"milk", allergen::milk, {"coconut-milk", "milk-soy", "milk-almond", "milk-oat"}},
      {"cream",
       allergen::milk,
       {"coconut-cream", "cream-of-tartar", "chestnut-cream", "stabiliser-ice-cream", "powder-custard"}},
      {"cheese", allergen::milk, {}},
      {"yogurt", allergen::milk, {}},
      {"egg", allergen::egg, {"eggplant"}},
      {"mayonnaise", allergen::egg | allergen::mustard, {}},
      {"almond", allergen::nuts, {}},
      {"hazelnut", allergen::nuts, {}},
      {"walnut", allergen::nuts, {}},
      {"pistachio", allergen::nuts, {}},
      {"pecan", allergen::nuts, {}},
      {"cashew", allergen::nuts, {}},
      {"macadamia", allergen::nuts, {}},
      {"praline", allergen::nuts, {}},
      {"peanut", allergen::peanut, {}},
      {"sesame", allergen::sesame, {}},
      {"soy", allergen::soy, {"oil-soybean"}},
      {"celery", allergen::celery, {}},
      {"celeriac", allergen::celery, {}},
      {"mustard", allergen::mustard, {}},
      {"lupin", allergen::lupin, {}},
      {"wine", allergen::sulphites, {"sake", "mirin"}},
      {"cider", allergen::sulphites, {}},
      {"stock", allergen::celery, {"syrup-simple-30"}},
      {"anchov", allergen::fish, {}},
      {"shrimp", allergen::crustaceans, {}},
      {"oyster", allergen::molluscs, {"mushroom-oyster", "salsify"}},
      {"milk chocolate", allergen::milk, {}},
      {"white chocolate", allergen::milk, {}},
  };
  for (const Word& word : words) {
    std::size_t seen = 0;
    for (const Food& food : food::foods()) {
      if (!says(food, word.word)) continue;
      ++seen;
      CAPTURE(word.word, food.id, food.english, food.allergens);
      if (word.not_for.count(std::string(food.id)) == 1) {
        CHECK((food.allergens & word.bits) != word.bits);
      } else {
        CHECK((food.allergens & word.bits) == word.bits);
      }
    }
    CAPTURE(word.word);
    CHECK(seen > 0);
  }
}

TEST_CASE("what an exception of the law exempts is said beside the food", "[allergens][table]") {
  for (const char* id :
       {"oil-soybean", "oil-vegetable", "whisky", "dextrose", "chestnut", "coconut-milk", "gelatine-leaf"}) {
    CAPTURE(id);
    CHECK_FALSE(food::food_by_id(id)->allergen_source.empty());
  }
}

TEST_CASE("gels, salt and leavening forgive least, garnish most", "[tolerance]") {
  for (const Role role : {Role::setting, Role::salt, Role::yeast, Role::leavening}) {
    CHECK(food::tolerance_of(role) == base::Ratio(1, 100));
  }
  for (const Role role : {Role::flour, Role::sugar, Role::egg, Role::fat}) {
    CHECK(food::tolerance_of(role) == base::Ratio(2, 100));
  }
  CHECK(food::tolerance_of(Role::garnish) == base::Ratio(10, 100));
}
