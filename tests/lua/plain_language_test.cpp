#include <catch2/catch.hpp>

#include <filesystem>
#include <string>
#include <utility>

#include "tests/lua/hosting.h"
#include "tests/shared_files.h"

using namespace tamis;

namespace {

namespace fs = std::filesystem;

std::string plain(const std::string& fiche, std::string_view settings = {}) {
  const tests::Loaded loaded = tests::load_boxed("plain-language", settings);
  return loaded.plugin == nullptr ? loaded.lines() : tests::said(*loaded.plugin, fiche);
}

std::string steps(const std::string& inside, const std::string& language = "en") {
  return "<fiche xmlns=\"urn:tamis:fiche:1\" id=\"a\" lang=\"" + language + "\">\n  <title>A</title>\n  <component id=\"c\" title=\"C\">\n    " + inside +
         "\n  </component>\n</fiche>\n";
}

}  // namespace

TEST_CASE("plain language has nothing to say of the demo kitchen, and one trade word of the printed recipes") {
  std::string all;
  const auto fiches = tests::project_fiches();
  for (const auto& [path, text] : fiches) all += plain(text);
  CHECK(fiches.size() > 20);
  CHECK(all == "37:30 plain-word: \"bain-marie\" is a word of the trade [write \"bowl over hot water\", or put it in brackets behind]\n");
}

TEST_CASE("sentences are counted between full stops and semicolons, in the step itself") {
  const std::string fiche = steps("<step>Stir in the milk, the cream and the sugar.<why>One two three four five six seven eight nine ten eleven.</why></step>");
  CHECK(plain(fiche, "sentence-words=9") == "");
  CHECK(plain(fiche, "sentence-words=8") == "4:5 plain-sentence: a sentence of 9 words; 8 is the most that is read in one go [make two of it]\n");
  CHECK(plain(fiche, "sentence-words=0") == "");
  CHECK(plain(steps("<step>Stir in the milk; stir in the cream. Stir in 1.5 kg sugar.</step>"), "sentence-words=5") == "");
  CHECK(plain(steps("<step>Stir in the milk, the cream and the sugar.</step>", "da"), "sentence-words=3") == "");
}

TEST_CASE("a step has so many actions and no more") {
  const std::string fiche = steps("<step do=\"melt stir strain chill\">Melt, stir, strain, chill.</step>");
  CHECK(plain(fiche) == "4:5 plain-actions: 4 actions in one step: melt, stir, strain, chill [make a step of each that has its own end]\n");
  CHECK(plain(fiche, "actions=4") == "");
  CHECK(plain(fiche, "actions=0") == "");
}

TEST_CASE("a trade word is said once, where it is not explained") {
  const std::string advice = " is a word of the trade [write \"fine sieve\", or put it in brackets behind]\n";
  const std::pair<std::string, std::string> rows[] = {
      {"<step>Pass through a chinois. Rinse the chinois.</step><step>Use the chinois.</step>", "4:26 plain-word: \"chinois\"" + advice},
      {"<step>Pass through a Chinois.</step>", "4:26 plain-word: \"Chinois\"" + advice},
      {"<step>Pass through a chinois (fine sieve).</step><step>Use the chinois.</step>", ""},
      {"<step>Pass through a chinois.<learner>Pass through the finest sieve.</learner></step>", ""},
      {"<step>Strain.<note>We use a chinois.</note></step>", ""},
      {"<step>Pass it with chinoiserie.</step>", ""},
      {"<ingredient id=\"a\" name=\"chinois\">1</ingredient><step>Stir.</step>", ""},
  };
  for (const auto& [inside, expected] : rows) {
    CAPTURE(inside);
    CHECK(plain(steps(inside)) == expected);
  }
  CHECK(plain(steps("<step>Die Sauce montieren.</step>", "de-AT")) ==
        "4:21 plain-word: \"montieren\" is a word of the trade [write \"kalte Butter einrühren\", or put it in brackets behind]\n");
  CHECK(plain(steps("<step>Napar con la salsa.</step>", "es")) ==
        "4:11 plain-word: \"Napar\" is a word of the trade [write \"cubrir con salsa\", or put it in brackets behind]\n");
  CHECK(plain(steps("<step>Couper les tomates concassées.</step>", "fr")) == "");
}

TEST_CASE("a house has its own trade words") {
  CHECK(plain(steps("<step>Spin in the chinois, then temper.</step>"), "trade-words=temper; spin: turn fast") ==
        "4:11 plain-word: \"Spin\" is a word of the trade [write \"turn fast\", or put it in brackets behind]\n"
        "4:37 plain-word: \"temper\" is a word of the trade [say what it means, in brackets behind it]\n");
}
