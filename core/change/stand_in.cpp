#include "core/change/stand_in.h"

#include <array>
#include <string>

#include "core/change/kept.h"

namespace tamis::change {

using fiche::At;
using fiche::Document;
using fiche::El;
using fiche::Node;

namespace {

constexpr std::array said_of_food = {At::name, At::pieces, At::size, At::bloom, At::fat, At::cocoa, At::purchase};

bool is_note(const Document& document, Node node, std::string_view kind) {
  return document.el(node) == El::note && document.get(node, At::kind) == kind;
}

bool is_stand_in_note(const Document& document, Node node) {
  return is_note(document, node, market_note) || is_note(document, node, swap_note);
}

Node last_of(const Document& document, Node ingredient) {
  const Node above = document.parent(ingredient);
  return document.el(above) == El::choice ? above : ingredient;
}

bool by_a_swap(const Document& document, Node ingredient) {
  for (Node c = document.next(last_of(document, ingredient)); c != fiche::none; c = document.next(c)) {
    if (is_note(document, c, swap_note)) return true;
    const bool between =
        document.kind(c) == fiche::NodeKind::text || is_added_line(document, c) || is_stand_in_note(document, c);
    if (!between) return false;
  }
  return false;
}

/// "cream cream-2" without "cream-2".
void forget_name(Document& document, Node node, const std::string& name) {
  if (document.el(node) == El::use) {
    const std::string of(document.get(node, At::of));
    const std::string end = " " + name;
    if (of.ends_with(end)) document.set_attribute(node, At::of, of.substr(0, of.size() - end.size()));
    if (const std::size_t at = of.find(end + " "); at != std::string::npos) {
      document.set_attribute(node, At::of, of.substr(0, at) + of.substr(at + end.size()));
    }
  }
  for (Node c = document.first_child(node); c != fiche::none; c = document.next(c)) {
    if (document.kind(c) == fiche::NodeKind::element) forget_name(document, c, name);
  }
}

void remove_what_stands_behind(Document& document, Node ingredient) {
  for (Node c = document.next(last_of(document, ingredient)); c != fiche::none;) {
    const Node after = document.next(c);
    if (is_stand_in_note(document, c)) {
      document.remove(c);
    } else if (is_added_line(document, c)) {
      const std::string id(document.get(c, At::id));
      document.remove(c);
      if (!id.empty()) forget_name(document, document.root(), id);
    } else if (document.kind(c) != fiche::NodeKind::text) {
      return;
    }
    c = after;
  }
}

}  // namespace

bool stands_in_here(const Document& document, Node ingredient) {
  return document.find(ingredient, At::was_food) != fiche::none;
}

bool is_added_line(const Document& document, Node ingredient) {
  return document.kind(ingredient) == fiche::NodeKind::element && document.el(ingredient) == El::ingredient &&
         document.get(ingredient, At::was_food) == no_line;
}

void write_note(Document& document, Node ingredient, std::string_view kind, std::string_view words) {
  const Node behind = last_of(document, ingredient);
  const Node parent = document.parent(behind);
  const El above = document.el(parent);
  if (above != El::component && above != El::variant && above != El::fiche) return;
  Node before = document.next(behind);
  while (before != fiche::none && (is_stand_in_note(document, before) || is_added_line(document, before)))
    before = document.next(before);
  const Node note = document.add_element(parent, El::note, before);
  document.set_attribute(note, At::kind, kind);
  document.add_text(note, words);
}

void take_back_food(Document& document, Node ingredient) {
  if (!stands_in_here(document, ingredient) || is_added_line(document, ingredient)) return;
  const bool swapped = by_a_swap(document, ingredient);
  for (const At at : said_of_food) {
    const bool kept = document.find(ingredient, kept_name(El::ingredient, at)) != fiche::none;
    const bool added = at == At::name || (swapped && at != At::purchase);
    if (!kept && added) document.remove_attribute(ingredient, at);
    put_back(document, ingredient, at);
  }
  for (Node c = document.first_child(ingredient); c != fiche::none; c = document.next(c)) {
    if (document.el(c) != El::amount) continue;
    if (swapped && document.find(c, At::was_pieces) == fiche::none) document.remove_attribute(c, At::pieces);
    put_back(document, c, At::pieces);
  }
  document.set_attribute(ingredient, At::food, document.get(ingredient, At::was_food));
  document.remove_attribute(ingredient, At::was_food);
  remove_what_stands_behind(document, ingredient);
}

}  // namespace tamis::change
