// Figures, cues and foods inside the sentences of a method, in four languages.

#include <catch2/catch.hpp>

#include "tests/format/draft_tools.h"

using namespace tamis;

namespace {

struct Row {
  const char* language;
  const char* typed;
  const char* want;
};

std::shared_ptr<fiche::Document> with_step(const std::string& language, const std::string& list, const std::string& step) {
  const bool de = language == "de";
  const bool fr = language == "fr";
  const bool es = language == "es";
  const std::string over_list = de ? "Zutaten" : fr ? "Ingr\u00E9dients" : es ? "Ingredientes" : "Ingredients";
  const std::string over_steps = de ? "Zubereitung" : fr ? "Pr\u00E9paration" : es ? "Elaboraci\u00F3n" : "Method";
  return tests::fiche_of(tests::drafted("Dish\n\n" + over_list + "\n" + list + "\n\n" + over_steps + "\n1. " + step + "\n", language, "metric"));
}

std::string read_step(const std::string& language, const std::string& list, const std::string& step) {
  const auto document = with_step(language, list, step);
  const auto steps = tests::all_of(*document, fiche::El::step);
  return steps.size() == 1 ? tests::inner_xml(*document, steps[0]) : std::to_string(steps.size()) + " steps";
}

}  // namespace

TEST_CASE("figures in a sentence are marked for what they are", "[draft]") {
  const Row rows[] = {
      {"en", "Bake at 180 \u00B0C for 15 to 25 minutes.",
       "Bake at <oven-temp>180 \u00B0C</oven-temp> for <time>15 to 25 minutes</time>."},
      {"en", "Bake for 25-20 minutes.", "Bake for <time>25-20 minutes</time>."},  // typed the wrong way round: the check mends it
      {"en", "Heat the oven to 350\u00B0F.", "Heat the oven to <oven-temp>350\u00B0F</oven-temp>."},
      {"en", "Roast at gas mark 4.", "Roast at <oven-temp>gas mark 4</oven-temp>."},
      {"en", "Bake at 190 \u00B0C/gas mark 5.",
       "Bake at <oven-temp>190 \u00B0C</oven-temp>/<oven-temp>gas mark 5</oven-temp>."},
      {"en", "Bake at 180 \u00B0C (160 \u00B0C fan).",
       "Bake at <oven-temp>180 \u00B0C</oven-temp> (<oven-temp mode=\"fan\">160 \u00B0C</oven-temp> fan)."},
      {"en", "Bake at 180 \u00B0C fan or 200 \u00B0C static.",
       "Bake at <oven-temp mode=\"fan\">180 \u00B0C</oven-temp> fan or <oven-temp mode=\"static\">200 \u00B0C</oven-temp> static."},
      {"en", "Bake at 160 fan / 180 static.", "Bake at 160 fan / 180 static."},
      {"en", "Cook to 82 \u00B0C.", "Cook to <food-temp>82 \u00B0C</food-temp>."},
      {"en", "Cool to 30 \u00B0C, then pour.", "Cool to <food-temp>30 \u00B0C</food-temp>, then pour."},
      {"en", "Roast until the core is at 54 \u00B0C.",
       "Roast <until>until the core is at <food-temp place=\"core\">54 \u00B0C</food-temp></until>."},
      {"en", "Fry in oil at 175 \u00B0C.", "Fry in oil at <medium-temp>175 \u00B0C</medium-temp>."},
      {"en", "Set in a water bath at 62 \u00B0C overnight.",
       "Set in a water bath at <medium-temp>62 \u00B0C</medium-temp> <time>overnight</time>."},
      {"en", "Leave in a room of 20 \u00B0C.", "Leave in a room of <room-temp>20 \u00B0C</room-temp>."},
      {"en", "Freeze at -18 \u00B0C.", "Freeze at <medium-temp>-18 \u00B0C</medium-temp>."},
      {"en", "Bake for 20 minutes at 200 \u00B0C, then lower to 160 \u00B0C.",
       "Bake for <time>20 minutes</time> at <oven-temp>200 \u00B0C</oven-temp>, then lower to <oven-temp>160 \u00B0C</oven-temp>."},
      {"en", "Add 50 ml hot stock and stir.", "Add <amount>50 ml</amount> hot stock and stir."},
      {"en", "Roll out 1 cm thick and cut.", "Roll out <length>1 cm</length> thick and cut."},
      {"en", "Press into a 20 x 30 cm tin.", "Press into a <length>20 x 30 cm</length> tin."},
      {"en", "Work at 31 \u00B0C.", "Work at 31 \u00B0C."},
      {"en", "Simmer until thick, about 10 minutes.",
       "Simmer <until>until thick</until>, <time>about 10 minutes</time>."},
      {"fr", "Cuire au four \u00E0 180 \u00B0C pendant 20 min.",
       "Cuire au four \u00E0 <oven-temp>180 \u00B0C</oven-temp> pendant <time>20 min</time>."},
      {"fr", "Pr\u00E9chauffer le four \u00E0 160 \u00B0C chaleur tournante.",
       "Pr\u00E9chauffer le four \u00E0 <oven-temp mode=\"fan\">160 \u00B0C</oven-temp> chaleur tournante."},
      {"fr", "Refroidir \u00E0 40 \u00B0C et couler.", "Refroidir \u00E0 <food-temp>40 \u00B0C</food-temp> et couler."},
      {"fr", "Laisser pousser 1 h 30.", "Laisser pousser <time>1 h 30</time>."},
      {"fr", "M\u00E9langer jusqu'\u00E0 ce que la p\u00E2te soit lisse.",
       "M\u00E9langer <until>jusqu'\u00E0 ce que la p\u00E2te soit lisse</until>."},
      {"fr", "\u00C9taler sur 3 mm et couper.", "\u00C9taler sur <length>3 mm</length> et couper."},
      {"de", "Den Ofen auf 180 \u00B0C Umluft vorheizen.",
       "Den Ofen auf <oven-temp mode=\"fan\">180 \u00B0C</oven-temp> Umluft vorheizen."},
      {"de", "Bei 200 \u00B0C 15\u201320 Minuten backen.",
       "Bei <oven-temp>200 \u00B0C</oven-temp> <time>15\u201320 Minuten</time> backen."},
      {"de", "Auf 82 \u00B0C erhitzen.", "Auf <food-temp>82 \u00B0C</food-temp> erhitzen."},
      {"de", "30 Minuten kalt stellen.", "<time>30 Minuten</time> kalt stellen."},
      {"de", "Backen, bis der Teig goldbraun ist.", "Backen, <until>bis der Teig goldbraun ist</until>."},
      {"es", "Hornear a 180 \u00B0C durante 35 minutos.",
       "Hornear a <oven-temp>180 \u00B0C</oven-temp> durante <time>35 minutos</time>."},
      {"es", "Fre\u00EDr en aceite a 175 \u00B0C.", "Fre\u00EDr en aceite a <medium-temp>175 \u00B0C</medium-temp>."},
      {"es", "Cocer hasta que espese.", "Cocer <until>hasta que espese</until>."},
      {"es", "Enfriar a 4 \u00B0C en la nevera.", "Enfriar a <medium-temp>4 \u00B0C</medium-temp> en la nevera."},
  };
  for (const Row& row : rows) {
    CAPTURE(row.language, row.typed);
    CHECK(read_step(row.language, "1 moonberry", row.typed) == row.want);
  }
}

TEST_CASE("ingredients are linked to the words that name them", "[draft]") {
  struct Linked {
    const char* language;
    const char* list;
    const char* typed;
    const char* want;
  };
  const Linked rows[] = {
      {"en", "4 eggs", "Beat the egg.", "Beat the <use of=\"eggs\">egg</use>."},
      {"en", "100 g unsalted butter", "Melt the butter.", "Melt the <use of=\"butter\">butter</use>."},
      {"en", "100 g caster sugar", "Add half the sugar.", "Add <use of=\"sugar\" take=\"1/2\">half the sugar</use>."},
      {"en", "100 g caster sugar", "Add the remaining sugar.",
       "Add <use of=\"sugar\" take=\"the rest\">the remaining sugar</use>."},
      {"en", "100 g caster sugar", "Add a third of the sugar.",
       "Add <use of=\"sugar\" take=\"1/3\">a third of the sugar</use>."},
      {"en", "100 g butter", "Add 20 g of the butter.",
       "Add <use of=\"butter\"><amount>20 g</amount> of the butter</use>."},
      {"en", "100 g butter\nbutter for the tin", "Grease the tin with butter.",
       "Grease the tin with <use of=\"recipe-butter\">butter</use>."},
      {"en", "100 g butter\nbutter for the tin", "Melt the butter.", "Melt the <use of=\"butter\">butter</use>."},
      {"en", "100 g butter\n50 ml cream", "Cream the butter.", "Cream the <use of=\"butter\">butter</use>."},
      {"en", "100 g water", "Stir over a pan of simmering water.", "Stir over a pan of simmering water."},
      {"en", "1 vanilla pod", "Add the vanilla.", "Add the <use of=\"vanilla\">vanilla</use>."},
      {"en", "3 eggs", "Add the egg yolks.", "Add the egg yolks."},
      {"en", "300 g strong flour\n100 g rye flour", "Mix the flours.",
       "Mix the <use of=\"flour rye-flour\">flours</use>."},
      {"en", "300 g strong flour\n100 g rye flour", "Add flour slowly.", "Add flour slowly."},
      {"en", "zest and juice of 1 lemon", "Add the lemon zest, then the juice.",
       "Add the <use of=\"zest\">lemon zest</use>, then the <use of=\"juice\">juice</use>."},
      {"en", "200 g chocolate", "Pour over the chocolate at 35 \u00B0C.",
       "Pour over the <use of=\"chocolate\">chocolate</use> at <food-temp>35 \u00B0C</food-temp>."},
      {"fr", "125 g de beurre mou", "Ajouter le reste du beurre.",
       "Ajouter <use of=\"beurre\" take=\"the rest\">le reste du beurre</use>."},
      {"fr", "75 g de beurre", "Foncer le cercle beurr\u00E9.", "Foncer le cercle beurr\u00E9."},
      {"de", "2 Eier", "Die Eier trennen.", "Die <use of=\"eier\">Eier</use> trennen."},
      {"de", "1 Zitrone", "Die H\u00E4lfte der Zitrone pressen.",
       "<use of=\"zitrone\" take=\"1/2\">Die H\u00E4lfte der Zitrone</use> pressen."},
      {"es", "200 g de az\u00FAcar", "A\u00F1adir la mitad del az\u00FAcar.",
       "A\u00F1adir <use of=\"azucar\" take=\"1/2\">la mitad del az\u00FAcar</use>."},
  };
  for (const Linked& row : rows) {
    CAPTURE(row.language, row.list, row.typed);
    CHECK(read_step(row.language, row.list, row.typed) == row.want);
  }
}

TEST_CASE("verbs and places become a step's action and where it is done", "[draft]") {
  struct Done {
    const char* language;
    const char* typed;
    const char* actions;
    const char* place;
  };
  const Done rows[] = {
      {"en", "Melt the butter in a saucepan and whisk in the eggs.", "melt whisk", "hob"},
      {"en", "Fold in the rest of the cream.", "fold", ""},
      {"en", "Leave to rest, then chill in the fridge.", "rest chill", "fridge"},
      {"en", "Preheat the oven.", "preheat", "oven"},
      {"en", "Knead for 5 minutes in the mixer.", "knead", "mixer"},
      {"fr", "Fouetter les \u0153ufs puis tamiser la farine.", "whisk sift", ""},
      {"fr", "Congeler une nuit au cong\u00E9lateur.", "freeze", "freezer"},
      {"de", "Sahne steif schlagen und unterheben.", "whip fold", ""},
      {"de", "Im Ofen backen.", "bake", "oven"},
      {"es", "Batir y hornear.", "whisk bake", "oven"},
  };
  for (const Done& row : rows) {
    CAPTURE(row.language, row.typed);
    const auto document = with_step(row.language, "1 moonberry", row.typed);
    const auto steps = tests::all_of(*document, fiche::El::step);
    REQUIRE(steps.size() == 1);
    CHECK(document->get(steps[0], fiche::At::do_) == row.actions);
    CHECK(document->get(steps[0], fiche::At::on) == row.place);
  }
}
