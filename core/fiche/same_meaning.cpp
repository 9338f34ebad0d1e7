#include <algorithm>

#include "core/fiche/document.h"
#include "core/fiche/prose.h"

namespace tamis::fiche {
namespace {

using Attributes = std::vector<std::pair<std::string_view, std::string_view>>;

/// In order of their names. The default namespace says nothing: JSON leaves it out.
Attributes attributes_of(const Document& document, Node n) {
  Attributes out;
  for (Attr a = document.first_attribute(n); a != none; a = document.next_attribute(a)) {
    if (document.attribute_name(a) != "xmlns")
      out.emplace_back(document.attribute_name(a), document.attribute_value(a));
  }
  std::sort(out.begin(), out.end());
  return out;
}

class Comparison {
 public:
  Comparison(const Document& a, const Document& b) : a_(a), b_(b) {}

  bool same(Node a, Node b, bool in_line) const {
    if (a_.kind(a) != b_.kind(b)) return false;
    if (a_.kind(a) == NodeKind::foreign) return a_.value(a) == b_.value(b);
    if (a_.name(a) != b_.name(b)) return false;
    if (a_.kind(a) != NodeKind::element) return a_.value(a) == b_.value(b);
    return attributes_of(a_, a) == attributes_of(b_, b) && same_content(a, b, in_line);
  }

  bool same_content(Node a, Node b, bool in_line) const {
    const std::vector<Run> left = runs_of(a_, a, in_line), right = runs_of(b_, b, in_line);
    return std::equal(left.begin(), left.end(), right.begin(), right.end(),
                      [&](const Run& x, const Run& y) { return same_run(x, y, in_line); });
  }

 private:
  bool same_run(const Run& a, const Run& b, bool in_line) const {
    if (a.prose != b.prose) return false;
    return std::equal(a.parts.begin(), a.parts.end(), b.parts.begin(), b.parts.end(),
                      [&](const Part& x, const Part& y) { return same_part(x, y, in_line || a.prose); });
  }

  bool same_part(const Part& a, const Part& b, bool in_line) const {
    if (a.node == none || b.node == none) return a.node == b.node && a.text == b.text;
    return same(a.node, b.node, in_line);
  }

  const Document& a_;
  const Document& b_;
};

}  // namespace

bool same_meaning(const Document& a, const Document& b) {
  return Comparison(a, b).same_content(a.top(), b.top(), false);
}

}  // namespace tamis::fiche
