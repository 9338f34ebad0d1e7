#include "core/fiche/reference.h"

#include "core/base/utf8.h"

namespace tamis::fiche {

FileReference split_reference(std::string_view reference) {
  reference = base::trimmed(reference);
  const std::size_t hash = reference.find('#');
  if (hash == reference.npos) return {reference, {}};
  return {reference.substr(0, hash), reference.substr(hash + 1)};
}

Target follow(const Document& from, std::string_view file, Library& library) {
  Target target;
  if (file.empty()) {
    target.document = &from;
    return target;
  }
  auto opened = library.open(from.source().path(), file);
  if (opened) {
    target.held = *opened;
    target.document = target.held.get();
  } else {
    target.fault = opened.fault();
  }
  return target;
}

std::vector<Node> components_of(const Document& document) {
  std::vector<Node> out;
  const Node root = document.root();
  if (root == none) return out;
  for (Node c = document.first_child(root); c != none; c = document.next(c)) {
    if (document.kind(c) == NodeKind::element && document.el(c) == El::component) out.push_back(c);
  }
  return out;
}

Node component_named(const Document& document, std::string_view id) {
  for (const Node n : components_of(document)) {
    if (base::trimmed(document.get(n, At::id)) == id) return n;
  }
  return none;
}

}  // namespace tamis::fiche
