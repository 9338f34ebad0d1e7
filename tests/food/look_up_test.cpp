#include <catch2/catch.hpp>
#include <string>

#include "core/food/food.h"

using tamis::food::look_up;
using tamis::food::Match;
using How = tamis::food::Match::How;

namespace {
struct Row {
  const char* written;
  const char* language;
  const char* food;
  How how;
};
}  // namespace

TEST_CASE("what cooks write finds the food they mean", "[look-up]") {
  const Row rows[] = {
      {"butter", "en", "butter-unsalted", How::exact},
      {"Butter", "en", "butter-unsalted", How::exact},
      {"beurre", "fr", "butter-unsalted", How::exact},
      {"beurre", "en", "butter-unsalted", How::exact},
      {"unsalted butter, soft", "en", "butter-unsalted", How::part},
      {"egg", "en", "egg-whole", How::exact},
      {"eggs", "en", "egg-whole", How::variant},
      {"large eggs", "en", "egg-whole", How::part},
      {"egg yolks", "en", "egg-yolk", How::variant},
      {"yolks", "en", "egg-yolk", How::variant},
      {"jaunes d'œufs", "fr", "egg-yolk", How::variant},
      {"jaunes d’oeufs", "fr", "egg-yolk", How::variant},
      {"white of an egg", "en", "egg-white", How::exact},
      {"eggs, whole, frozen", "en", "egg-whole-frozen", How::variant},
      {"caster sugar", "en", "sugar-white", How::exact},
      {"sugar, granulated", "en", "sugar-white", How::variant},
      {"confectioners' sugar", "en", "sugar-icing", How::exact},
      {"confectioners’ sugar", "en", "sugar-icing", How::exact},
      {"fine loaf sugar", "en", "sugar-loaf", How::exact},
      {"all-purpose flour", "en", "flour-wheat-white", How::exact},
      {"all purpose flour", "en", "flour-wheat-white", How::exact},
      {"plain flour", "en", "flour-wheat-white", How::exact},
      {"flour, wheat, general purpose", "en", "flour-wheat-white", How::part},
      {"farine", "fr", "flour-wheat-white", How::exact},
      {"double cream", "en", "cream-double", How::exact},
      {"35% cream", "en", "cream-35", How::exact},
      {"cream (35 %)", "en", "cream-35", How::exact},
      {"dark chocolate 64%", "en", "chocolate-dark-64", How::exact},
      {"64 % dark chocolate", "en", "chocolate-dark-64", How::exact},
      {"fresh raspberries", "en", "raspberry", How::part},
      {"gelatin leaves", "en", "gelatine-leaf", How::exact},
      {"milk, nonfat, dry", "en", "milk-powder-skimmed", How::variant},
      {"extract, vanilla", "en", "vanilla-extract", How::exact},
      {"corn starch", "en", "starch-maize", How::exact},
      {"corn-starch", "en", "starch-maize", How::exact},
      {"Zucker", "de", "sugar-white", How::exact},
      {"huevos", "es", "egg-whole", How::exact},
      {"buter", "en", "butter-unsalted", How::near},
      {"caster suger", "en", "sugar-white", How::near},
      {"fresh rasberries", "en", "raspberry", How::near},
  };
  for (const Row& row : rows) {
    CAPTURE(row.written, row.language);
    const auto matches = look_up(row.written, row.language);
    REQUIRE_FALSE(matches.empty());
    CHECK(std::string(matches[0].food->id) == row.food);
    CHECK(static_cast<int>(matches[0].how) == static_cast<int>(row.how));
  }
}

TEST_CASE("a name that two languages share means the reader's own food", "[look-up]") {
  CHECK(look_up("prunes", "fr").at(0).food->id == "plum");
  CHECK(look_up("prunes", "en").at(0).food->id == "prune");
  CHECK(look_up("raisin", "fr").at(0).food->id == "grape");
  CHECK(look_up("raisin", "en").at(0).food->id == "raisin");
}

TEST_CASE("the thing itself comes before what flavours it", "[look-up]") {
  CHECK(look_up("raspberry vinegar", "en").at(0).food->id == "vinegar-white");
  CHECK(look_up("vinaigre de framboise", "fr").at(0).food->id == "vinegar-white");
}

TEST_CASE("nothing is found where nothing is meant", "[look-up]") {
  for (const char* text : {"", " ", "%", "xyzzyq", "à", "1"}) {
    CAPTURE(text);
    CHECK(look_up(text, "en").empty());
  }
  CHECK(look_up("butter", "en", 0).empty());
  std::string sentence;
  for (int i = 0; i < 10000; ++i) sentence += "buter suger ";
  CHECK(look_up(sentence, "en").empty());
}

TEST_CASE("bytes that are not UTF-8 do no harm", "[look-up]") {
  CHECK(look_up("\xff\xfe\x80", "en").empty());
  CHECK(look_up("butter\xc3", "en").at(0).food->id == "butter-unsalted");
}

TEST_CASE("a figure is never taken for another one", "[look-up]") {
  for (const Match& match : look_up("dark chocolate 66 %", "en")) CHECK(match.how != How::near);
  CHECK(look_up("T56", "en").empty());
}

TEST_CASE("the same name gives the same foods in the same order", "[look-up]") {
  const auto first = look_up("chocolate", "en");
  CHECK(first.size() == 5);
  for (int i = 0; i < 3; ++i) {
    const auto again = look_up("chocolate", "en");
    REQUIRE(again.size() == first.size());
    for (std::size_t at = 0; at < first.size(); ++at) CHECK(again[at].food == first[at].food);
  }
}

TEST_CASE("the ingredients of printed recipes are found", "[look-up]") {
  // As the fourteen printed recipes under tests/against/real write them.
  const Row rows[] = {
      {"beef, diced, lean, raw", "en", "beef-stewing", How::part},
      {"tomatoes, canned, diced, drained", "en", "tomato-canned", How::part},
      {"pepper, black, ground", "en", "pepper-black", How::variant},
      {"garlic powder", "en", "garlic-powder", How::exact},
      {"thyme, ground", "en", "thyme-dried", How::variant},
      {"bay leaf, whole, dried", "en", "bay-leaf", How::variant},
      {"carrots, fresh, sliced", "en", "carrot", How::part},
      {"celery, fresh, sliced", "en", "celery", How::part},
      {"beef, ribeye, raw", "en", "beef-ribeye", How::part},
      {"eggs, whole, frozen", "en", "egg-whole-frozen", How::variant},
      {"extract, vanilla", "en", "vanilla-extract", How::exact},
      {"Seville oranges", "en", "orange-seville", How::exact},
      {"mignonette pepper", "en", "pepper-black-cracked", How::exact},
      {"vinegar, good", "en", "vinegar-white", How::part},
      {"granulated gelatine", "en", "gelatine-powder", How::exact},
      {"powdered sugar", "en", "sugar-icing", How::exact},
      {"lady fingers", "en", "biscuit-ladyfinger", How::exact},
      {"wine jelly, cubes", "en", "jelly-wine", How::part},
      {"baking soda", "en", "baking-soda", How::exact},
      {"vegetable oil", "en", "oil-vegetable", How::exact},
      {"chocolate chips", "en", "chocolate-chips", How::exact},
      {"walnuts (optional)", "en", "walnut", How::part},
      {"low-sodium chicken broth", "en", "stock-chicken", How::exact},
      {"canned no-salt-added diced tomatoes, undrained", "en", "tomato-canned", How::part},
      {"dried parsley", "en", "parsley-dried", How::exact},
      {"seafood seasoning blend", "en", "seasoning-seafood", How::exact},
      {"frozen peas and carrots, thawed, drained", "en", "pea-carrot-frozen", How::part},
      {"frozen green beans", "en", "bean-green-frozen", How::exact},
      {"canned low-sodium tomato paste", "en", "tomato-paste", How::part},
      {"ancho chili powder", "en", "chili-powder", How::exact},
      {"whole-grain elbow macaroni", "en", "pasta-wholemeal", How::exact},
      {"sliced peaches, canned in syrup", "en", "peach-canned-syrup", How::exact},
      {"shortening", "en", "shortening", How::exact},
      {"sweet pickle relish, undrained", "en", "relish-sweet", How::part},
      {"reduced calorie salad dressing", "en", "salad-dressing-light", How::exact},
      {"lowfat mayonnaise", "en", "mayonnaise-light", How::exact},
      {"dry mustard", "en", "mustard-powder", How::exact},
      {"enriched all-purpose flour", "en", "flour-wheat-white", How::exact},
      {"instant nonfat dry milk, reconstituted", "en", "milk-powder-instant", How::part},
      {"active dry yeast", "en", "yeast-active-dry", How::exact},
      {"frozen whole eggs, thawed", "en", "egg-whole-frozen", How::part},
      {"canola oil", "en", "oil-rapeseed", How::exact},
  };
  for (const Row& row : rows) {
    CAPTURE(row.written, row.language);
    const auto matches = look_up(row.written, row.language);
    REQUIRE_FALSE(matches.empty());
    CHECK(std::string(matches[0].food->id) == row.food);
    CHECK(static_cast<int>(matches[0].how) == static_cast<int>(row.how));
  }
}
