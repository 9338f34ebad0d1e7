#include <algorithm>
#include <set>

#include <catch2/catch.hpp>

#include "core/fiche/library.h"
#include "core/rules/rule.h"
#include "tests/against/real_recipe.h"

// What the check says about the fourteen printed recipes: the contradictions that stand in the sources, and nothing
// else. real/findings.csv lists every warning and error with both figures and why it is right.

namespace tamis::tests {
namespace {

using fiche::At;
using fiche::Node;

bool holds(const fiche::Document& document, Node n, std::uint32_t place) {
  const base::Span span = document.span(n);
  return document.kind(n) == fiche::NodeKind::element && span.begin <= place && place < span.end;
}

/// The ids on the way down to a place, the last two that are: "onions", "onions servings-50" for another batch.
std::string line_at(const fiche::Document& document, std::uint32_t place) {
  std::string id;
  for (Node n = document.root(); n != fiche::none;) {
    const std::string_view own = document.get(n, At::id);
    const std::string_view batch = document.get(n, At::batch);
    if (!own.empty()) id = own;
    if (!batch.empty()) id += " " + std::string(batch);
    Node inner = document.first_child(n);
    while (inner != fiche::none && !holds(document, inner, place)) inner = document.next(inner);
    n = inner;
  }
  return id;
}

}  // namespace

TEST_CASE("the check finds the contradictions of the real recipes and nothing else", "[real]") {
  std::set<std::vector<std::string>> expected;
  for (const auto& row : real_table("findings.csv")) {
    CAPTURE(row[0], row[1], row[3]);
    CHECK_FALSE(row[6].empty());  // each has its reason
    CHECK(expected.insert({row.begin(), row.begin() + 6}).second);
  }
  std::set<std::vector<std::string>> found;
  for (const std::string& id : real_recipes()) {
    const auto real = real_fiche(id);
    for (const base::Finding& finding : rules::check(*real->document, real->kitchen, fiche::empty_library())) {
      if (finding.severity < base::Severity::warning) continue;
      const std::string figure(real->document->source().slice(finding.where));
      const std::string other(finding.related.empty()
                                  ? std::string_view()
                                  : real->document->source().slice(finding.related.front().where));
      CAPTURE(id, finding.rule, finding.message);
      if (finding.rule == "mass-and-volume-disagree") {
        CHECK(finding.message.find(figure) != std::string::npos);
        CHECK(finding.message.find(other) != std::string::npos);
      }
      found.insert({id, finding.rule, std::string(base::severity_name(finding.severity)),
                    line_at(*real->document, finding.where.begin), figure, other});
    }
  }
  for (const auto& row : found) {
    CAPTURE(row[0], row[1], row[2], row[3], row[4], row[5]);
    CHECK(expected.count(row) == 1);
  }
  for (const auto& row : expected) {
    CAPTURE(row[0], row[1], row[2], row[3], row[4], row[5]);
    CHECK(found.count(row) == 1);
  }
}

TEST_CASE("the printed pairs that the source's quirks call wrong are found", "[real]") {
  // The quirks that name a pair: pudding salt, soup onions, minestrone garlic, roll eggs.
  const std::vector<std::pair<std::string, std::string>> named = {
      {"afrs-vanilla-cream-pudding-j018", "salt"},
      {"usda-chicken-vegetable-soup-h040b", "onions"},
      {"usda-minestrone-h070", "garlic"},
      {"usda-whole-grain-dinner-rolls", "eggs"}};
  for (const auto& [id, ingredient] : named) {
    const auto real = real_fiche(id);
    const auto findings = rules::check(*real->document, real->kitchen, fiche::empty_library());
    CAPTURE(id, ingredient);
    CHECK(std::any_of(findings.begin(), findings.end(), [&, wanted = ingredient](const base::Finding& f) {
      return f.rule == "mass-and-volume-disagree" && line_at(*real->document, f.where.begin) == wanted;
    }));
  }
}

}  // namespace tamis::tests
