// Ingredient lines as people type them, in four languages.

#include <catch2/catch.hpp>

#include "tests/format/draft_tools.h"

using namespace tamis;

namespace {

struct Row {
  const char* language;
  const char* typed;
  const char* want;  ///< amount | attributes, without id and food
};

std::string read_line(const std::string& language, const std::string& typed, bool with_food) {
  const std::string word = language == "de" ? "Zutaten" : language == "fr" ? "Ingr\u00E9dients" : language == "es" ? "Ingredientes" : "Ingredients";
  const auto document = tests::fiche_of(tests::drafted("Dish\n\n" + word + "\n" + typed + "\n", language, "metric"));
  std::string out;
  for (const fiche::Node node : tests::all_of(*document, fiche::El::ingredient)) {
    if (!out.empty()) out += " ; ";
    out += tests::ingredient_line(*document, node, with_food);
  }
  return out;
}

}  // namespace

TEST_CASE("ingredient lines are read as typed", "[draft]") {
  const Row rows[] = {
      {"en", "250 g butter, diced", "250 g | name=butter prep=diced"},
      {"en", "- 250 g butter, diced", "250 g | name=butter prep=diced"},
      {"en", "butter 250g", "250g | name=butter"},
      {"en", "butter: 250 g", "250 g | name=butter"},
      {"en", "butter - 250 g", "250 g | name=butter"},
      {"en", "250g unsalted butter (soft)", "250g | name=unsalted butter prep=soft"},
      {"en", "4 eggs", "4 | name=eggs"},
      {"en", "4 large eggs (200 g)", "200 g | name=eggs pieces=4 size=large"},
      {"en", "1 \u00BD cups flour (180 g)", "1 \u00BD cups | name=flour also=180 g"},
      {"en", "250 g (9 oz) butter", "250 g | name=butter also=9 oz"},
      {"en", "250 g / 9 oz butter", "250 g | name=butter also=9 oz"},
      {"en", "2 x 400 g tins tomatoes", "800 g | name=tomatoes packs=2 pack=400 g tins"},
      {"en", "salt, to taste", "to taste | name=salt"},
      {"en", "salt to taste", "to taste | name=salt"},
      {"en", "a pinch of salt", "a pinch | name=salt"},
      {"en", "pinch salt", "a pinch | name=salt"},
      {"en", "zest of 1 lemon", "1 | name=lemon"},
      {"en", "6 leaves gelatine (12 g)", "12 g | name=leaves gelatine pieces=6"},
      {"en", "100-120 g sugar", "100-120 g | name=sugar"},
      {"en", "2 tbsp + 1 tsp oil", "2 tbsp + 1 tsp | name=oil"},
      {"en", "optional: 30 g nuts", "30 g | name=nuts optional=yes"},
      {"en", "30 g nuts (optional)", "30 g | name=nuts optional=yes"},
      {"en", "30 g nuts, optional", "30 g | name=nuts optional=yes"},
      {"en", "butter for the tin", "| name=butter for the tin purpose=tin"},
      {"en", "flour for dusting", "| name=flour for dusting purpose=bench"},
      {"en", "50 g sugar + 30 g honey", "50 g | name=sugar ; 30 g | name=honey"},
      {"en", "200 ml cream 35%", "200 ml | name=cream fat=35 %"},
      {"en", "chocolate 64 % 180 g", "180 g | name=chocolate cocoa=64 %"},
      {"en", "salt and black pepper, to taste", "to taste | name=salt ; to taste | name=black pepper"},
      {"en", "1,500 g flour", "| name=1,500 g flour"},
      {"en", "* 60 ml water", "60 ml | name=water"},
      {"fr", "125 g de beurre mou", "125 g | name=beurre mou"},
      {"fr", "3 c. \u00E0 s. de sucre", "3 c. \u00E0 s. | name=sucre"},
      {"fr", "\u00BD c. \u00E0 c. de sel", "\u00BD c. \u00E0 c. | name=sel"},
      {"fr", "1,5 kg de farine", "1,5 kg | name=farine"},
      {"fr", "1 pinc\u00E9e de sel", "1 pinc\u00E9e | name=sel"},
      {"fr", "6 \u0153ufs (300 g)", "300 g | name=\u0153ufs pieces=6"},
      {"fr", "25 cl de cr\u00E8me liquide 35 %", "25 cl | name=cr\u00E8me liquide fat=35 %"},
      {"fr", "zeste de 2 citrons", "2 | name=citrons"},
      {"fr", "beurre pour le moule", "| name=beurre pour le moule purpose=tin"},
      {"fr", "30 g de noix (facultatif)", "30 g | name=noix optional=yes"},
      {"de", "2 EL Zucker", "2 EL | name=Zucker"},
      {"de", "1,2 kg \u00C4pfel", "1,2 kg | name=\u00C4pfel"},
      {"de", "6 Blatt Gelatine (10 g)", "10 g | name=Blatt Gelatine pieces=6"},
      {"de", "1 Prise Salz", "1 Prise | name=Salz"},
      {"de", "150 g Butter, weich", "150 g | name=Butter prep=weich"},
      {"de", "Butter f\u00FCr die Form", "| name=Butter f\u00FCr die Form purpose=tin"},
      {"de", "Saft von 1 Zitrone", "1 | name=Zitrone"},
      {"de", "\u00BD TL Zimt", "\u00BD TL | name=Zimt"},
      {"es", "100 g harina", "100 g | name=harina"},
      {"es", "200 g de az\u00FAcar", "200 g | name=az\u00FAcar"},
      {"es", "3 huevos grandes", "3 | name=huevos size=grandes"},
      {"es", "1 pizca de sal", "1 pizca | name=sal"},
      {"es", "2 cucharadas de miel", "2 cucharadas | name=miel"},
      {"es", "1 sobre de levadura qu\u00EDmica (16 g)", "16 g | name=levadura qu\u00EDmica packs=1 pack=sobre"},
      {"es", "mantequilla para el molde", "| name=mantequilla para el molde purpose=tin"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.language, row.typed);
    CHECK(read_line(row.language, row.typed, false) == row.want);
  }
}

TEST_CASE("a food is named only when one answers to the name", "[draft]") {
  const Row rows[] = {
      {"en", "250 g unsalted butter", "250 g | food=butter-unsalted name=unsalted butter"},
      {"en", "250 g butter, diced", "250 g | food=butter-unsalted name=butter prep=diced"},
      {"en", "200 g whipping cream 35 %", "200 g | food=cream-35 name=whipping cream fat=35 %"},
      {"en", "200 g cream 36 %", "200 g | food=cream-36 name=cream fat=36 %"},
      {"en", "200 g dark chocolate 64 %", "200 g | food=chocolate-dark-64 name=dark chocolate cocoa=64 %"},
      {"en", "200 g moonberry paste", "200 g | name=moonberry paste"},
      {"fr", "250 g de farine", "250 g | food=flour-wheat-white name=farine"},
      {"de", "250 g Mehl", "250 g | food=flour-wheat-white name=Mehl"},
      {"es", "250 g de harina", "250 g | food=flour-wheat-white name=harina"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.language, row.typed);
    CHECK(read_line(row.language, row.typed, true) == row.want);
  }
}
