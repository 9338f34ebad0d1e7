#include "core/rules/near_miss.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

using fiche::El;
using fiche::Node;

std::string tag(std::string_view name) { return "<" + std::string(name) + ">"; }

std::string where_it_may_stand(El el) {
  std::vector<std::string_view> parents;
  for (const fiche::ElementRule& rule : fiche::element_rules()) {
    if (rule.may_hold(el)) parents.push_back(rule.name);
  }
  if (parents.empty()) return tag(fiche::name_of(el)) + " is the first element of a file and stands nowhere else";
  return "it may stand in " + list_of(parents, 20);
}

void say_misplaced(Check& check, Node n) {
  const fiche::Document& document = check.document;
  const Node parent = document.parent(n);
  if (document.kind(n) == fiche::NodeKind::foreign) {
    check.say(document.head_span(n), "an element of a house's own may not stand in " + tag(document.name(parent)),
              "put it beside " + tag(document.name(parent)) + ", or use an attribute with your prefix");
  } else if (parent == document.top()) {
    check.say(document.head_span(n), tag(document.name(n)) + " is not what a file starts with",
              "the first element is <fiche> or <kitchen>");
  } else {
    check.say(document.head_span(n), tag(document.name(n)) + " may not stand in " + tag(document.name(parent)),
              where_it_may_stand(document.el(n)));
  }
}

/// A fiche has one title, and it comes first.
void look_at_title(Check& check) {
  const fiche::Document& document = check.document;
  const Node root = document.root();
  if (root == fiche::none || document.el(root) != El::fiche) return;
  Node first = fiche::none;
  Node title = fiche::none;
  for (Node c = document.first_child(root); c != fiche::none; c = document.next(c)) {
    const fiche::NodeKind kind = document.kind(c);
    if (kind != fiche::NodeKind::element && kind != fiche::NodeKind::foreign) continue;
    const bool is_title = kind == fiche::NodeKind::element && document.el(c) == El::title;
    if (is_title && title != fiche::none) {
      base::Finding& finding = check.say(document.head_span(c), "the fiche has a second <title>",
                                         "keep one; a name in another language or for the menu is a <summary> or <note>");
      finding.related.push_back({document.head_span(title), "the first is here", {}, {}, {}});
    } else if (is_title && first != fiche::none) {
      check.say(document.head_span(c), "<title> comes after " + tag(document.name(first)),
                "put <title> first in the fiche");
    }
    if (is_title && title == fiche::none) title = c;
    if (first == fiche::none) first = c;
  }
}

void run(Check& check) {
  for (const Node n : check.structure.misplaced_elements) say_misplaced(check, n);
  look_at_title(check);
}

}  // namespace

/// A known element at a place where it may not stand, a second title, or a title that is not first.
const Rule misplaced_element = {
    .id = "misplaced-element",
    .severity = base::Severity::error,
    .topic = "document",
    .summary = "a known element where it may not stand",
    .explanation = R"(Each element has its places. An oven temperature inside an ingredient line, or a step outside any
component, cannot be printed, converted or planned: nothing says what it belongs to.

The advice names the elements it may stand in. Move it there, tags and all.)",
    .bad = R"(    <ingredient food="butter-unsalted">200 g <oven-temp mode="fan">170 °C</oven-temp></ingredient>)",
    .good = R"(    <ingredient food="butter-unsalted">200 g</ingredient>
    <step>Melt at <oven-temp mode="fan">170 °C</oven-temp>.</step>)",
    .source = "the document's schema (schemas/tamis.rnc)",
    .schemas = "rng xsd json",
    .run = run,
};

}  // namespace tamis::rules
