#include <catch2/catch.hpp>

#include "core/rules/vague_words.h"
#include "tests/rules/checking.h"

using namespace tamis;

namespace {

std::string marked(const std::string& text, const std::optional<rules::VagueWords>& found) {
  return found ? text.substr(found->begin, found->end - found->begin) : "";
}

struct Row {
  const char* language;
  const char* text;
  const char* found;
};

}  // namespace

TEST_CASE("until done shows nothing; until something that can be seen does") {
  const Row row = GENERATE(values<Row>({
      {"en", "Cook until done.", "until done"},
      {"en", "Bake until it is ready, then cool.", "until it is ready"},
      {"en", "Cook until the onions are cooked and strain.", "until the onions are cooked"},
      {"en", "Whisk until it has the right consistency.", "until it has the right consistency"},
      {"en", "Cook until the custard coats the spoon.", ""},
      {"en", "Cook until set.", ""},
      {"en", "Cook until cooked through and no longer pink.", ""},
      {"en", "Chill until ready to serve.", ""},
      {"en", "Keep warm until ready.", ""},
      {"en", "Set aside until ready.", ""},
      {"en", "Bake until a skewer comes out with a good crumb.", ""},
      {"fr", "Cuire jusqu'à cuisson complète.", "jusqu'à cuisson complète"},
      {"fr", "Cuire jusqu’à ce que ce soit prêt.", "jusqu’à ce que ce soit prêt"},
      {"fr", "Cuire jusqu'à ce que la crème nappe la cuillère.", ""},
      {"fr", "Réserver jusqu'à ce que tout soit prêt.", ""},
      {"de", "Kochen, bis es fertig ist.", "bis es fertig ist"},
      {"de", "Garen, bis das Gemüse gar ist.", "bis das Gemüse gar ist"},
      {"de", "Rühren, bis die Masse zur Rose abzieht.", ""},
      {"de", "Backen: 20 bis 30 Minuten.", ""},
      {"es", "Cocer hasta que esté listo.", "hasta que esté listo"},
      {"es", "Cocer hasta que nape la cuchara.", ""},
      {"it", "Cuocere until done.", ""},
  }));
  CAPTURE(row.text);
  CHECK(marked(row.text, rules::until_without_picture(row.text, row.language)) == row.found);
}

TEST_CASE("an until mark is read whole") {
  CHECK(rules::is_no_picture("until done", "en"));
  CHECK(rules::is_no_picture("Until it is ready", "en-GB"));
  CHECK(rules::is_no_picture("ready", "en"));
  CHECK_FALSE(rules::is_no_picture("until done on top and wet below", "en"));
  CHECK_FALSE(rules::is_no_picture("until a skewer comes out dry", "en"));
  CHECK_FALSE(rules::is_no_picture("", "en"));
  CHECK(rules::is_no_picture("jusqu'à cuisson", "fr"));
  CHECK(rules::is_no_picture("bis sie gar sind", "de"));
  CHECK_FALSE(rules::is_no_picture("bis sie oben schwimmen", "de"));
}

TEST_CASE("words that lean on habit are found in each language") {
  const Row row = GENERATE(values<Row>({
      {"en", "Line the ring as usual.", "as usual"},
      {"en", "Bake for the usual time.", "the usual time"},
      {"en", "Unusual as it is, leave it.", ""},
      {"fr", "Foncer comme d'habitude.", "comme d'habitude"},
      {"de", "Wie üblich auslegen.", "Wie üblich"},
      {"es", "Forrar el aro como siempre.", "como siempre"},
  }));
  CAPTURE(row.text);
  CHECK(marked(row.text, rules::leans_on_habit(row.text, row.language)) == row.found);
}

TEST_CASE("a little of a food is no amount, a little at a time is") {
  const Row row = GENERATE(values<Row>({
      {"en", "Loosen with a little milk.", "a little milk"},
      {"en", "Add some cold water.", "some cold water"},
      {"en", "Add plenty of salt.", "plenty of salt"},
      {"en", "Pour in a little at a time.", ""},
      {"en", "Leave it a little longer.", ""},
      {"en", "Cook for some minutes.", ""},
      {"en", "Awesome milk.", ""},
      {"en", "Temper with a little of the milk.", ""},
      {"en", "Temper with a little \x01.", ""},
      {"fr", "Ajouter un peu de lait.", "un peu de lait"},
      {"fr", "Attendre un peu.", ""},
      {"fr", "Ajouter un peu de la crème.", ""},
      {"de", "Etwas Butter zugeben.", "Etwas Butter"},
      {"de", "Etwas abkühlen lassen.", ""},
  }));
  CAPTURE(row.text);
  CHECK(marked(row.text, rules::vague_amount(row.text, row.language)) == row.found);
}

TEST_CASE("a picture of done lets every word stand") {
  const auto said = [](const std::string& step) {
    return tests::check_text("<fiche xmlns=\"urn:tamis:fiche:1\" id=\"x\" state=\"released\" lang=\"en\" units=\"metric\"><title>T</title>"
                             "<component id=\"a\" title=\"A\">" + step + "</component><keep for=\"2 days\"/><allergens>None.</allergens>"
                             "<trial date=\"2026-03-14\" verdict=\"passed\"/></fiche>")
        .rules();
  };
  CHECK(said("<step do=\"mix\">Mix until ready.</step>") == "done-without-picture");
  CHECK(said("<step do=\"mix\">Mix until ready.<done>It falls in a ribbon.</done></step>") == "");
  CHECK(said("<step do=\"mix\">Mix as usual.</step>") == "as-usual");
  CHECK(said("<step do=\"mix\">Mix as usual, <until>until it falls in a ribbon</until>.</step>") == "");
  CHECK(said("<step do=\"mix\">Mix as usual, <until>until done</until>.</step>") == "as-usual done-without-picture");
  CHECK(said("<step do=\"mix\">Add a little water.</step>") == "amount-without-measure");
  CHECK(said("<step do=\"mix\">Add a little water, <until>until it runs off the spoon</until>.</step>") == "");
  CHECK(said("<step do=\"mix\" when=\"it is too thick\">Add a little water.</step>") == "");
  CHECK(said("<step do=\"mix\">Mix.<rescue>Add a little water.</rescue></step>") == "");
}
