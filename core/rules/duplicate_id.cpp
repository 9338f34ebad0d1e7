#include <algorithm>

#include "core/rules/near_miss.h"
#include "core/rules/registry.h"
#include "core/rules/value_pattern.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;

Node ancestor(const fiche::Document& document, Node n, El el) {
  while (n != fiche::none && n != document.top() && document.el(n) != el) n = document.parent(n);
  return n == document.top() ? fiche::none : n;
}

/// The child of `above` that holds `n`.
Node branch_of(const fiche::Document& document, Node above, Node n) {
  while (document.parent(n) != above) n = document.parent(n);
  return n;
}

/// The two never meet: options of one choice, lists of different variants, steps that are ways apart.
bool are_alternatives(const fiche::Document& document, Node a, Node b) {
  const Node choice = ancestor(document, a, El::choice);
  if (choice != fiche::none && choice == ancestor(document, b, El::choice) && choice != a && choice != b) {
    return branch_of(document, choice, a) != branch_of(document, choice, b);
  }
  const Node variant = ancestor(document, a, El::variant);
  const Node other = ancestor(document, b, El::variant);
  if (variant != fiche::none && other != fiche::none && variant != other && variant != a && other != b) return true;
  if (document.el(a) != El::step || document.el(b) != El::step) return false;
  const auto apart = [&](At at) {
    return document.get(a, at) != document.get(b, at) || (at == At::when && !document.get(a, at).empty());
  };
  return apart(At::branch) || apart(At::batch) || apart(At::when);
}

/// A step and its result, or a component and the result of a step in it, may go by one name: they are the same thing.
bool are_the_same_thing(const fiche::Document& document, Node a, Node b) {
  if (a == b) return true;
  if (document.el(a) != El::component) std::swap(a, b);
  return document.el(a) == El::component && document.el(b) == El::step && ancestor(document, b, El::component) == a;
}

base::Span place_of(const fiche::Document& document, Node n, std::string_view name) {
  const fiche::Attr id = document.find(n, At::id);
  if (id != fiche::none && document.attribute_value(id) == name) return document.value_span(id);
  base::Span found = document.head_span(n);
  const fiche::Attr makes = document.find(n, At::makes);
  if (makes == fiche::none) return found;
  for_each_word(document.attribute_value(makes), [&](std::string_view word, std::size_t at) {
    if (word == name) found = document.value_span(makes, at, at + word.size());
  });
  return found;
}

void compare(Check& check, std::string_view name, std::span<const Node> nodes) {
  const fiche::Document& document = check.document;
  for (std::size_t later = 1; later < nodes.size(); ++later) {
    const auto clash = std::find_if(nodes.begin(), nodes.begin() + static_cast<std::ptrdiff_t>(later), [&](Node earlier) {
      return !are_alternatives(document, earlier, nodes[later]) && !are_the_same_thing(document, earlier, nodes[later]);
    });
    if (clash == nodes.begin() + static_cast<std::ptrdiff_t>(later)) continue;
    base::Finding& finding = check.say(place_of(document, nodes[later], name),
                                       "the name " + quoted(name) + " is already given",
                                       "give this one a name of its own, and use it where this one is meant");
    finding.related.push_back({place_of(document, *clash, name), "first given here", {}, {}, {}});
  }
}

void run(Check& check) {
  const auto& ids = check.fiche.ids;
  std::vector<Node> nodes;
  for (auto entry = ids.begin(); entry != ids.end();) {
    const auto end = ids.upper_bound(entry->first);
    if (std::next(entry) != end) {
      nodes.clear();
      for (auto one = entry; one != end; ++one) nodes.push_back(one->second);
      std::sort(nodes.begin(), nodes.end());
      compare(check, entry->first, nodes);
    }
    entry = end;
  }
}

}  // namespace

/// Two things of one fiche or kitchen file under one name. Options of a choice, lists of variants and steps of
/// different branches may share a name: only one of them is ever made.
const Rule duplicate_id = {
    .id = "duplicate-id",
    .severity = base::Severity::error,
    .topic = "document",
    .summary = "two things in one file have the same name",
    .explanation = R"(Steps name what they take by its id. When two lines are called "sugar", nothing says whether the
sponge's sugar or the syrup's goes into the pan.

The options of a choice, the lists of variants and steps of different branches may share a name, for only one of
them is ever made; so may a step, its result and the component it is in.)",
    .bad = R"(    <ingredient id="sugar" food="sugar-white">200 g</ingredient>
    <ingredient id="sugar" food="sugar-white">50 g</ingredient>
    <step>Boil the <use of="sugar">sugar</use>.</step>)",
    .good = R"(    <ingredient id="sugar-syrup" food="sugar-white">200 g</ingredient>
    <ingredient id="sugar-sponge" food="sugar-white">50 g</ingredient>
    <step>Boil the <use of="sugar-syrup">sugar</use>, and sift the <use of="sugar-sponge">sugar for the sponge</use>.</step>)",
    .source = "the document's specification (schemas/README.md)",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
