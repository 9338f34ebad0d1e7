#include "core/rules/file_reference.h"

#include "core/base/utf8.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;

void collect(const fiche::Document& document, Node n, std::vector<fiche::Attr>& out) {
  const El el = document.el(n);
  if (el == El::step) return;  // no references in prose
  if (el == El::component || el == El::ingredient) {
    const fiche::Attr from = document.find(n, At::from);
    if (from != fiche::none && !base::trimmed(document.attribute_value(from)).empty()) out.push_back(from);
  }
  for (Node c = document.first_child(n); c != fiche::none; c = document.next(c)) {
    if (document.kind(c) == fiche::NodeKind::element) collect(document, c, out);
  }
}

void collect_ids(const fiche::Document& document, Node n, std::vector<std::string_view>& out) {
  const El el = document.el(n);
  if ((el == El::ingredient || el == El::part) && !document.get(n, At::id).empty()) out.push_back(document.get(n, At::id));
  for (Node c = document.first_child(n); c != fiche::none; c = document.next(c)) {
    if (document.kind(c) == fiche::NodeKind::element && document.el(c) != El::step) collect_ids(document, c, out);
  }
}

}  // namespace

std::vector<std::string_view> ids_in(const fiche::Document& document, Node n) {
  std::vector<std::string_view> out;
  if (n != fiche::none) collect_ids(document, n, out);
  return out;
}

std::vector<fiche::Attr> references_in(const fiche::Document& document, Node n) {
  std::vector<fiche::Attr> out;
  collect(document, n, out);
  return out;
}

std::vector<fiche::Attr> references_in(const fiche::Document& document, const Structure& structure) {
  std::vector<fiche::Attr> out;
  for (const Structure::Attribute& given : structure.attributes) {
    if (given.rule->at != At::from || given.rule->value != fiche::Value::path) continue;
    if (!base::trimmed(document.attribute_value(given.attribute)).empty()) out.push_back(given.attribute);
  }
  return out;
}

}  // namespace tamis::rules
