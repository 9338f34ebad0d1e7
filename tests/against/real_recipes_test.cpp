#include <map>
#include <set>

#include <catch2/catch.hpp>

#include "core/format/format.h"
#include "tests/against/place.h"
#include "tests/against/real_recipe.h"
#include "tests/shared_files.h"

// Fourteen recipes that nobody of this project wrote (real-recipes/*.json of the reference data) as fiches: what is
// hard in each of them has a place that says it (real/quirks.csv).

namespace tamis::tests {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;

Node parent_of(const RealFiche& real, std::size_t ingredient) {
  return real.document->parent(real.fiche.ingredients.at(ingredient).node);
}

std::size_t count_children(const fiche::Document& document, Node n, El el) {
  std::size_t out = 0;
  for (Node c = document.first_child(n); c != fiche::none; c = document.next(c)) out += document.el(c) == el ? 1U : 0U;
  return out;
}

}  // namespace

TEST_CASE("the fourteen real recipes read without a finding and have their source", "[real]") {
  CHECK(real_recipes().size() == 14);
  for (const std::string& id : real_recipes()) {
    const auto real = real_fiche(id);
    CAPTURE(id);
    CHECK(real->fiche.id == id);
    CHECK(real->document->child(real->document->root(), El::source) != fiche::none);
    CHECK_FALSE(real->fiche.steps.empty());
  }
}

TEST_CASE("every quirk of a real recipe has a place in its fiche", "[real]") {
  std::map<std::string, std::set<std::string>> listed;
  for (const auto& row : real_table("quirks.csv")) {
    const auto real = real_fiche(row[0]);
    CAPTURE(row[0], row[1], row[2]);
    CHECK_FALSE(at_place(*real->document, row[2]).empty());
    listed[row[0]].insert(row[1]);
  }
  for (const std::string& id : real_recipes()) {
    const auto printed = printed_recipe(id);
    if (!printed) return;
    std::set<std::string> wanted(printed->quirks.begin(), printed->quirks.end());
    wanted.insert(printed->heat_words.begin(), printed->heat_words.end());
    CAPTURE(id);
    CHECK(listed[id] == wanted);
  }
}

TEST_CASE("choices, splits, sub-recipes and variants of the source are those of the fiche", "[real]") {
  for (const std::string& id : real_recipes()) {
    const auto printed = printed_recipe(id);
    if (!printed) return;
    const auto real = real_fiche(id);
    std::map<std::string, std::set<Node>> groups;
    std::map<std::string, std::set<Node>> variants;
    for (std::size_t i = 0; i < printed->ingredients.size(); ++i) {
      const PrintedIngredient& line = printed->ingredients[i];
      const Node node = real->fiche.ingredients.at(i).node;
      CAPTURE(id, line.name);
      if (!line.group.empty()) groups[line.group].insert(parent_of(*real, i));
      if (!line.component.empty()) variants[line.component].insert(parent_of(*real, i));
      CHECK(count_children(*real->document, node, El::part) >= line.parts.size());
      CHECK((line.recipe.empty() || line.recipe == real->document->get(node, At::recipe)));
      CHECK((!line.tops_up || !real->document->get(node, At::tops_up).empty()));
      const bool optional = line.name.find("(optional)") != std::string::npos;
      CHECK((!optional || real->document->get(node, At::optional) == "yes"));
    }
    for (const auto& [name, parents] : groups) {
      CAPTURE(id, name);
      REQUIRE(parents.size() == 1);
      CHECK(real->document->el(*parents.begin()) == El::choice);
    }
    for (const auto& [name, parents] : variants) {
      CAPTURE(id, name);
      REQUIRE(parents.size() == 1);
      CHECK(real->document->el(*parents.begin()) == El::variant);
    }
  }
}

TEST_CASE("conditions, branches, reductions and control points of the source are those of the fiche", "[real]") {
  for (const std::string& id : real_recipes()) {
    const auto printed = printed_recipe(id);
    if (!printed) return;
    const auto real = real_fiche(id);
    std::size_t controls = 0;
    for (const PrintedStep& step : printed->steps) {
      controls += step.control ? 1U : 0U;
      CAPTURE(id, step.branch, step.reduce_by);
      const auto has = [&](const std::string& place) { return !at_place(*real->document, place).empty(); };
      CHECK((!step.conditional || has("step[when]")));
      CHECK((!step.missing || has("step gap")));
      CHECK((step.removes.empty() || has("step[removes]")));
      CHECK((step.branch.empty() || has("step[branch=" + step.branch + "]")));
      CHECK((step.reduce_by.empty() || has("step[reduce-by=" + step.reduce_by + "]")));
    }
    CHECK(at_place(*real->document, "step control").size() >= controls);
  }
}

TEST_CASE("the worked example reads in both spellings and is one document", "[real]") {
  const auto read = [](const std::string& path) {
    return format::read(std::make_shared<base::Source>(path, project_file(path)));
  };
  const format::Read xml = read("schemas/example.fiche.xml");
  const format::Read json = read("schemas/example.fiche.json");
  REQUIRE(xml.document != nullptr);
  REQUIRE(json.document != nullptr);
  CHECK(fiche::same_meaning(*xml.document, *json.document));
  CHECK(format::lay_out(*xml.document, fiche::Spelling::json) == project_file("schemas/example.fiche.json"));
  CHECK(format::lay_out(*json.document, fiche::Spelling::xml) == project_file("schemas/example.fiche.xml"));
}

}  // namespace tamis::tests
