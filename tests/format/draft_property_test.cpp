// What holds for every draft: nothing typed is lost, steps read as typed, the fiche is good.

#include <catch2/catch.hpp>
#include <map>
#include <random>
#include <set>

#include "core/format/draft_words.h"
#include "core/rules/rule.h"
#include "tests/format/draft_tools.h"
#include "tests/shared_files.h"

using namespace tamis;
using format::draft::Word;
using format::draft::words_of;

namespace {

/// Words that become structure: section words, what ties words together, and the numbers of steps.
const std::set<std::string>& structure_words() {
  static const std::set<std::string> words{
      "ingredients", "method", "directions", "notes", "zutaten", "zubereitung", "preparation", "ingredientes", "elaboracion",
      "etapes", "for", "the", "pour", "la", "le", "fur", "den", "die", "para", "of", "de", "d", "du", "des", "del", "and",
      "et", "und", "y", "step", "day", "optional", "facultatif", "x"};
  return words;
}

using Count = std::map<std::string, int>;

void count(Count& counts, std::string_view text, int by) {
  for (const Word& word : words_of(text)) counts[word.text] += by;
}

void count_fiche(const fiche::Document& document, Count& counts) {
  count(counts, document.all_text(document.top()), 1);
  for (fiche::Node n = 0;;) {
    // Every element, by walking the tree.
    for (fiche::Attr a = document.first_attribute(n); a != fiche::none; a = document.next_attribute(a)) {
      count(counts, document.attribute_value(a), 1);
    }
    if (document.first_child(n) != fiche::none) {
      n = document.first_child(n);
      continue;
    }
    while (n != fiche::none && n != document.top() && document.next(n) == fiche::none) n = document.parent(n);
    if (n == fiche::none || n == document.top()) return;
    n = document.next(n);
  }
}

/// Words typed that are neither in the fiche nor in a question; numbers at the start of a line are let be.
std::string lost_words(std::string_view typed, const format::Drafted& made, const fiche::Document& document) {
  Count counts;
  count_fiche(document, counts);
  for (const format::Question& question : made.questions) count(counts, question.words, 1);
  std::string lost;
  std::size_t begin = 0;
  while (begin <= typed.size()) {
    const std::size_t end = std::min(typed.find_first_of("\r\n", begin), typed.size());
    bool first = true;
    for (const Word& word : words_of(typed.substr(begin, end - begin))) {
      const bool number = first && word.figure();
      first = first && structure_words().count(word.text) > 0;
      if (--counts[word.text] >= 0 || number || structure_words().count(word.text) > 0) continue;
      lost += " " + word.text;
    }
    begin = end + 1;
  }
  return lost;
}

/// A recipe put together from lines of all drafts, in any order.
std::string shuffled(std::mt19937& random, const std::vector<std::string>& lines) {
  std::string text;
  const std::size_t count = random() % 30;
  for (std::size_t i = 0; i < count; ++i) text += lines[random() % lines.size()] + (random() % 7 == 0 ? "\n\n" : "\n");
  return text;
}

std::vector<std::string> lines_of_all_drafts() {
  std::vector<std::string> lines;
  for (const std::string& name : tests::draft_names()) {
    const std::string typed = tests::project_file("tests/drafts/" + name + ".txt");
    std::size_t begin = 0;
    while (begin < typed.size()) {
      const std::size_t end = std::min(typed.find('\n', begin), typed.size());
      lines.push_back(typed.substr(begin, end - begin));
      begin = end + 1;
    }
  }
  return lines;
}

}  // namespace

TEST_CASE("no word that was typed is lost", "[draft]") {
  for (const std::string& name : tests::draft_names()) {
    CAPTURE(name);
    const std::string typed = tests::project_file("tests/drafts/" + name + ".txt");
    const format::Drafted made = tests::drafted(typed);
    const auto document = tests::fiche_of(made);
    REQUIRE(document);
    CHECK(lost_words(typed, made, *document) == "");
  }
}

TEST_CASE("no word is lost however the lines are thrown together", "[draft]") {
  const std::vector<std::string> lines = lines_of_all_drafts();
  std::mt19937 random(20240611);
  for (int round = 0; round < 150; ++round) {
    const std::string typed = shuffled(random, lines);
    CAPTURE(round, typed);
    const format::Drafted made = tests::drafted(typed);
    if (made.xml.empty()) continue;
    const auto document = tests::fiche_of(made);
    REQUIRE(document);
    CHECK(lost_words(typed, made, *document) == "");
  }
}

TEST_CASE("a step reads as it was typed once its marks are taken off", "[draft]") {
  for (const std::string& name : tests::draft_names()) {
    const std::string typed = tests::folded(tests::project_file("tests/drafts/" + name + ".txt"));
    const auto document = tests::fiche_of(tests::drafted(tests::project_file("tests/drafts/" + name + ".txt")));
    REQUIRE(document);
    for (const fiche::Node step : tests::all_of(*document, fiche::El::step)) {
      CAPTURE(name, tests::folded(document->all_text(step)));
      CHECK(typed.find(tests::folded(document->all_text(step))) != std::string::npos);
    }
  }
}

TEST_CASE("the fiche of a draft says nothing that the check calls an error, where the amounts are clear", "[draft]") {
  // Two drafts leave open whose cup they mean, or a figure that cannot be read: the check says so as well.
  const std::set<std::string> open{"curd_squares_cups"};
  for (const std::string& name : tests::draft_names()) {
    const format::Drafted made = tests::drafted(tests::project_file("tests/drafts/" + name + ".txt"));
    const auto document = tests::fiche_of(made);
    REQUIRE(document);
    const fiche::Kitchen kitchen;
    std::size_t errors = 0;
    for (const base::Finding& finding : rules::check(*document, kitchen, fiche::empty_library())) {
      if (finding.severity != base::Severity::error) continue;
      ++errors;
      if (open.count(name) == 0) {
        CAPTURE(name, finding.rule, finding.message);
        CHECK(finding.severity != base::Severity::error);
      }
    }
    CAPTURE(name);
    if (open.count(name) > 0) CHECK(errors > 0);
  }
}

TEST_CASE("the same draft gives the same bytes, and the layout has nothing left to do", "[draft]") {
  for (const std::string& name : tests::draft_names()) {
    CAPTURE(name);
    const std::string typed = tests::project_file("tests/drafts/" + name + ".txt");
    const format::Drafted made = tests::drafted(typed);
    CHECK(tests::drafted(typed).xml == made.xml);
    CHECK(format::lay_out(*tests::fiche_of(made), fiche::Spelling::xml) == made.xml);
  }
}
