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
}
