// What holds for every draft: nothing typed is lost, steps read as typed, the fiche is good.

#include <catch2/catch.hpp>
#include <algorithm>
#include <random>
#include <set>

#include "core/rules/rule.h"
#include "tests/draft_words_kept.h"
#include "tests/format/draft_tools.h"
#include "tests/shared_files.h"

using namespace tamis;
namespace {

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
    CHECK(tests::lost_words(typed, made, *document, true) == "");
  }
}

// Lines thrown together repeat headings, which then stand in the fiche once.
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
    CHECK(tests::lost_words(typed, made, *document, false) == "");
  }
}

namespace {

/// Without the second scales that stand in attributes now: "180 °C (350 °F)" reads "180 °C".
std::string without_second_scales(std::string typed, const fiche::Document& document) {
  for (const fiche::El el : {fiche::El::oven_temp, fiche::El::food_temp, fiche::El::medium_temp}) {
    for (const fiche::Node mark : tests::all_of(document, el)) {
      const std::string also(document.get(mark, fiche::At::also));
      for (const std::string& said : {" (" + also + ")", " / " + also, "/" + also}) {
        const std::size_t at = also.empty() ? std::string::npos : typed.find(said);
        if (at != std::string::npos) typed.erase(at, said.size());
      }
    }
  }
  return typed;
}

}  // namespace

TEST_CASE("a step reads as it was typed once its marks are taken off", "[draft]") {
  for (const std::string& name : tests::draft_names()) {
    const std::string whole = tests::folded(tests::project_file("tests/drafts/" + name + ".txt"));
    const auto document = tests::fiche_of(tests::drafted(tests::project_file("tests/drafts/" + name + ".txt")));
    REQUIRE(document);
    const std::string typed = without_second_scales(whole, *document);
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
