#include "core/rules/structure.h"

#include "core/base/utf8.h"

namespace tamis::rules {
namespace {

using fiche::El;
using fiche::ElementRule;
using fiche::Node;
using fiche::NodeKind;

class Walk {
 public:
  explicit Walk(const fiche::Document& document) : document_(document) {}

  Structure read() {
    const Node root = document_.root();
    if (root == fiche::none) return std::move(out_);
    const El el = document_.el(root);
    if (el != El::unknown && el != El::fiche && el != El::kitchen && el != El::manifest) out_.misplaced_elements.push_back(root);
    visit(root);
    return std::move(out_);
  }

 private:
  void visit(Node n) {
    const El el = document_.el(n);
    const ElementRule* rule = el == El::unknown ? nullptr : &fiche::element_rule(el);
    if (rule == nullptr) {
      out_.unknown_elements.push_back(n);
    } else {
      out_.elements.push_back({n, rule});
      read_attributes(n, *rule);
    }
    for (Node c = document_.first_child(n); c != fiche::none; c = document_.next(c)) {
      if (rule != nullptr) judge(c, *rule);
      if (document_.kind(c) == NodeKind::element) visit(c);
    }
  }

  void judge(Node child, const ElementRule& parent) {
    switch (document_.kind(child)) {
      case NodeKind::text:
        if (!parent.text && !base::trimmed(document_.value(child)).empty()) out_.stray_texts.push_back(child);
        return;
      case NodeKind::foreign:
        if (!parent.foreign) out_.misplaced_elements.push_back(child);
        return;
      case NodeKind::element: {
        const El el = document_.el(child);
        if (el != El::unknown && !parent.may_hold(el)) out_.misplaced_elements.push_back(child);
        return;
      }
      default: return;
    }
  }

  void read_attributes(Node n, const ElementRule& rule) {
    for (fiche::Attr a = document_.first_attribute(n); a != fiche::none; a = document_.next_attribute(a)) {
      const fiche::AttributeRule* known = rule.attribute(document_.at(a));
      if (known != nullptr) {
        out_.attributes.push_back({a, n, known});
      } else if (!of_a_house(document_.attribute_name(a))) {
        out_.unknown_attributes.push_back(a);
      }
    }
  }

  static bool of_a_house(std::string_view name) { return name == "xmlns" || name.find(':') != name.npos; }

  const fiche::Document& document_;
  Structure out_;
};

}  // namespace

Structure read_structure(const fiche::Document& document) { return Walk(document).read(); }

}  // namespace tamis::rules
