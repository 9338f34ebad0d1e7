#include "core/change/kept.h"

#include <string>

#include "core/base/utf8.h"

namespace tamis::change {

using fiche::At;
using fiche::Document;
using fiche::El;
using fiche::Node;

At kept_name(El el, At at) {
  if (el == El::unknown) return At::unknown;
  const std::string name = at == At::unknown ? "was" : "was-" + std::string(fiche::name_of(at));
  const At kept = fiche::attribute_named(name);
  return kept != At::unknown && fiche::element_rule(el).attribute(kept) != nullptr ? kept : At::unknown;
}

At author_name(At kept) {
  const std::string_view name = fiche::name_of(kept);
  return name.starts_with("was-") ? fiche::attribute_named(name.substr(4)) : At::unknown;
}

void put_text(Document& document, Node node, std::string_view text) {
  bool written = false;
  for (Node c = document.first_child(node); c != fiche::none; c = document.next(c)) {
    if (document.kind(c) != fiche::NodeKind::text) continue;
    const std::string whole(document.value(c));
    const std::string_view inner = base::trimmed(whole);
    if (inner.empty()) continue;
    const auto begin = static_cast<std::size_t>(inner.data() - whole.data());
    std::string made = whole.substr(0, begin);
    if (!written) made += text;
    made += whole.substr(begin + inner.size());
    document.set_value(c, made);
    written = true;
  }
}

namespace {

/// An element's text as its statement has it: all of its own, without white space around it.
std::string said(const Document& document, Node node, At at) {
  if (at != At::unknown) return std::string(document.get(node, at));
  const std::string all = document.direct_text(node);
  return std::string(base::trimmed(all));
}

}  // namespace

void write_over(Document& document, Node node, At at, std::string_view text) {
  const std::string before = said(document, node, at);
  const At kept = kept_name(document.el(node), at);
  if (at == At::unknown) {
    put_text(document, node, text);
  } else {
    document.set_attribute(node, at, text);
  }
  document.set_attribute(node, kept, before);
}

void set_aside(Document& document, Node node, At at) {
  document.rename_attribute(node, at, kept_name(document.el(node), at));
}

void put_back(Document& document, Node node, At at) {
  const At kept = kept_name(document.el(node), at);
  if (kept == At::unknown || document.find(node, kept) == fiche::none) return;
  if (document.find(node, at) == fiche::none) return document.rename_attribute(node, kept, at);
  document.set_attribute(node, at, document.get(node, kept));
  document.remove_attribute(node, kept);
}

}  // namespace tamis::change
