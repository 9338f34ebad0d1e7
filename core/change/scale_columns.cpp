// Several stated batches: the new one becomes the first yield and the text of each line; what the author stated stays.

#include <algorithm>
#include <array>

#include "core/base/utf8.h"
#include "core/change/scale_work.h"

namespace tamis::change {

using fiche::At;
using fiche::Attr;
using fiche::Document;
using fiche::El;
using fiche::Node;

namespace {

constexpr std::array column_places = {At::also, At::pieces, At::purchase, At::packs, At::pack, At::loose, At::to};
constexpr std::array size_places = {At::portions, At::pieces, At::each, At::mass, At::volume, At::spare, At::words};

/// The name of an author's first yield that had none, while it stands behind a new one.
constexpr std::string_view given_id = "author-batch";

bool has_columns(const ScaleWork& work) {
  for (const fiche::Ingredient& one : work.author.ingredients) {
    for (const Node column : children_of(work.document, one.node, El::amount)) {
      if (work.document.find(column, At::batch) != fiche::none) return true;
    }
  }
  return false;
}

void copy_attributes(Document& document, Node from, Node to, At without) {
  for (Attr a = document.first_attribute(from); a != fiche::none; a = document.next_attribute(a)) {
    if (document.at(a) == without) continue;
    document.set_attribute(to, std::string(document.attribute_name(a)), std::string(document.attribute_value(a)));
  }
}

/// The yield again with its moulds and losses; its remarks stay with the author's.
Node copy_yield(Document& document, Node from, Node before) {
  const Node made = document.add_element(document.root(), El::yield, before);
  copy_attributes(document, from, made, At::id);
  for (const El el : {El::mould, El::loss}) {
    for (const Node child : children_of(document, from, el)) {
      copy_attributes(document, child, document.add_element(made, el), At::id);
    }
  }
  return made;
}

void keep_author_column(ScaleWork& work, const fiche::Ingredient& one, const std::string& batch) {
  Document& document = work.document;
  if (document.find(one.node, At::per) != fiche::none) return;
  const fiche::Statement* text = work.author.statement(one.node);
  const auto columns = children_of(document, one.node, El::amount);
  bool any = text != nullptr && (!columns.empty() || !text->amount || text->amount->has_figure());
  for (const At at : column_places) any = any || document.find(one.node, at) != fiche::none;
  if (!any) return;
  const Node made = document.add_element(one.node, El::amount, columns.empty() ? fiche::none : columns.front());
  document.set_attribute(made, At::batch, batch);
  for (const At at : column_places) {
    if (document.find(one.node, at) != fiche::none) {
      document.set_attribute(made, at, std::string(document.get(one.node, at)));
    }
  }
  if (text != nullptr) document.add_text(made, text->text);
}

/// The first yield is one that a scaling made: it has no id, and the columns beside it have.
bool is_made(const ScaleWork& work) {
  const Document& document = work.document;
  return document.find(document.root(), At::scaled_by) != fiche::none &&
         document.get(work.yields.front(), At::id).empty();
}

void take_over_size(ScaleWork& work) {
  Document& document = work.document;
  const Node to = work.written;
  for (const At at : size_places) {
    document.remove_attribute(to, at);
    if (document.find(work.base, at) != fiche::none) document.set_attribute(to, at, std::string(document.get(work.base, at)));
  }
  const auto own = children_of(document, to, El::mould), other = children_of(document, work.base, El::mould);
  for (std::size_t i = 0; i < std::min(own.size(), other.size()); ++i) {
    if (document.find(other[i], At::count) == fiche::none) continue;
    document.set_attribute(own[i], At::count, std::string(document.get(other[i], At::count)));
  }
}

std::string free_id(const ScaleWork& work) {
  std::string id(given_id);
  while (work.author.ids.contains(id)) id += "-1";
  return id;
}

}  // namespace

void keep_columns(ScaleWork& work) {
  if (work.yields.empty()) return;
  Document& document = work.document;
  const Node first = work.yields.front();
  work.written = first;
  work.verbatim = work.base != fiche::none && work.from_base == 1 && !work.mould;
  if (!has_columns(work)) {
    work.verbatim = false;
    work.base = fiche::none;
    work.from_base = work.factor;
    return;
  }
  if (is_made(work)) {
    if (work.verbatim) take_over_size(work);
    return;
  }
  if (document.get(first, At::id).empty()) document.set_attribute(first, At::id, free_id(work));
  const std::string batch(document.get(first, At::id));
  for (const fiche::Ingredient& one : work.author.ingredients) keep_author_column(work, one, batch);
  work.written = copy_yield(document, work.verbatim ? work.base : first, first);
}

void drop_columns(ScaleWork& work) {
  Document& document = work.document;
  const bool back = work.verbatim && work.written == work.yields.front() && work.yields.size() > 1 &&
                    work.base == work.yields[1] && document.find(document.root(), At::scaled_by) == fiche::none;
  if (!back) return;
  const std::string batch(document.get(work.base, At::id));
  for (const fiche::Ingredient& one : work.author.ingredients) {
    for (const Node column : children_of(document, one.node, El::amount)) {
      if (document.get(column, At::batch) == batch) document.remove(column);
    }
  }
  document.remove(work.written);
  if (batch.starts_with(given_id)) document.remove_attribute(work.base, At::id);
}

}  // namespace tamis::change
