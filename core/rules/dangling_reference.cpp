#include <algorithm>

#include "core/base/utf8.h"
#include "core/rules/file_reference.h"
#include "core/rules/near_miss.h"
#include "core/rules/registry.h"
#include "core/rules/value_pattern.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;
using fiche::Value;

/// A name given under a mistyped element or attribute: that is already said, and the reference is good.
bool given_under_wrong_name(const Check& check, std::string_view id) {
  const fiche::Document& document = check.document;
  const auto& elements = check.structure.unknown_elements;
  const auto& attributes = check.structure.unknown_attributes;
  return std::any_of(elements.begin(), elements.end(), [&](Node n) { return document.get(n, At::id) == id; }) ||
         std::any_of(attributes.begin(), attributes.end(), [&](fiche::Attr a) {
           bool found = false;
           for_each_word(document.attribute_value(a), [&](std::string_view word, std::size_t) { found |= word == id; });
           return found;
         });
}

std::string advice_for(const Check& check, std::string_view typed) {
  std::vector<std::string_view> ids;
  for (const auto& [id, node] : check.fiche.ids) {
    if (ids.empty() || ids.back() != id) ids.push_back(id);
  }
  const std::string_view meant = near_miss(typed, ids).word;
  if (!meant.empty()) return "write " + quoted(meant) + ", or give that name to what is meant";
  if (ids.empty()) return "give an id to what is meant";
  return "give that id to what is meant, or write one of " + list_of(ids, 8);
}

void look_at_word(Check& check, const Structure::Attribute& given, std::string_view word, std::size_t at) {
  const auto found = check.fiche.ids.find(word);
  const base::Span where = check.document.value_span(given.attribute, at, at + word.size());
  if (found == check.fiche.ids.end()) {
    if (!given_under_wrong_name(check, word)) {
      check.say(where, "nothing in this file is called " + quoted(word), advice_for(check, word));
    }
  } else if (given.rule->at == At::batch && check.document.el(found->second) != El::yield) {
    base::Finding& finding =
        check.say(where, "batch names " + quoted(word) + ", which is no <yield>", "write the id of a <yield>");
    finding.related.push_back({check.document.head_span(found->second), "what is called so", {}, {}, {}});
  }
}

/// Ids of this file: of, ref, batch, after, as-much-as ... Not makes, which gives names, nor override/@ingredient.
void look_at_ids(Check& check) {
  for (const Structure::Attribute& given : check.structure.attributes) {
    const bool names_ids = given.rule->value == Value::idref || given.rule->value == Value::idrefs;
    if (!names_ids || given.rule->at == At::makes || check.document.el(given.node) == El::override) continue;
    const std::string_view text = check.document.attribute_value(given.attribute);
    if (!fits(given.rule->value, text)) continue;  // bad-value says so
    for_each_word(text, [&](std::string_view word, std::size_t at) { look_at_word(check, given, word, at); });
  }
}

std::string nearest_component(const fiche::Document& other, std::string_view typed) {
  std::vector<std::string_view> ids;
  for (const Node n : components_of(other)) ids.push_back(other.get(n, At::id));
  const std::string_view meant = near_miss(typed, ids).word;
  if (!meant.empty()) return "write #" + std::string(meant);
  return ids.empty() ? "that file has no components" : "its components are " + list_of(ids);
}

void look_at_overrides(Check& check, Node component, const fiche::Document& other, Node part) {
  for (Node c = check.document.first_child(component); c != fiche::none; c = check.document.next(c)) {
    if (check.document.kind(c) != fiche::NodeKind::element || check.document.el(c) != El::override) continue;
    const fiche::Attr named = check.document.find(c, At::ingredient);
    if (named == fiche::none) continue;
    const std::string_view id = base::trimmed(check.document.attribute_value(named));
    const std::vector<std::string_view> ids = ids_in(other, part == fiche::none ? other.root() : part);
    if (std::find(ids.begin(), ids.end(), id) != ids.end()) continue;
    const std::string_view meant = near_miss(id, ids).word;
    check.say(check.document.value_span(named), "the other file has no ingredient " + quoted(id),
              meant.empty() ? "its ingredients are " + list_of(ids) : "write " + quoted(meant));
  }
}

void look_at_file(Check& check, fiche::Attr from) {
  const FileReference reference = split_reference(check.document.attribute_value(from));
  const base::Span where = check.document.value_span(from);
  const Target target = follow(check.document, reference.file, check.library);
  if (target.fault) {
    if (target.fault->rule == "escaping-reference") return;  // that rule says so
    const bool missing = target.fault->rule == "dangling-reference";
    check.say(where, missing ? target.fault->message
                             : quoted(reference.file) + " cannot be read: " + target.fault->message,
              missing ? "check the name and the folder; the path is seen from this file" : "check that file first");
    return;
  }
  Node part = fiche::none;
  if (!reference.part.empty()) {
    part = component_named(*target.document, reference.part);
    if (part == fiche::none) {
      check.say(where, quoted(reference.file) + " has no component " + quoted(reference.part),
                nearest_component(*target.document, reference.part));
      return;
    }
  }
  const Node owner = check.document.owner(from);
  if (check.document.el(owner) == El::component) look_at_overrides(check, owner, *target.document, part);
}

void run(Check& check) {
  look_at_ids(check);
  for (const fiche::Attr from : references_in(check.document, check.structure)) look_at_file(check, from);
}

}  // namespace

/// An id that nothing has, or a file or component that is not there.
const Rule dangling_reference = {
    .id = "dangling-reference",
    .severity = base::Severity::error,
    .topic = "document",
    .summary = "a name that leads nowhere",
    .explanation = R"(A step that uses "yolk" where the ingredient is called "yolks" uses nothing: the yolks count as
never used, and no amount can be printed in the sentence. The same holds for a batch that no <yield> has, and for
another fiche, or a component in it, that is not in the library.

The advice names the nearest name there is. A result (makes) counts as a name, and so does a part.)",
    .bad = R"(    <ingredient id="yolks" food="egg-yolk">90 g</ingredient>
    <step>Whisk the <use of="yolk">yolks</use>.</step>)",
    .good = R"(    <ingredient id="yolks" food="egg-yolk">90 g</ingredient>
    <step>Whisk the <use of="yolks">yolks</use>.</step>)",
    .source = "the document's specification (schemas/README.md)",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
