#include "core/lua/selecting.h"

#include <algorithm>
#include <array>
#include <pugixml.hpp>
#include <unordered_map>

namespace tamis::lua {
namespace {

using fiche::Document;
using fiche::Node;
using fiche::NodeKind;

constexpr std::size_t longest = 200;  // bytes of an expression
constexpr int most_descents = 3;      // "//", descendant::, ancestor::
constexpr int most_predicates = 4;
constexpr int most_steps = 12;

base::Finding refusal(std::string message, std::string advice) {
  base::Finding made;
  made.message = std::move(message);
  made.advice = std::move(advice);
  return made;
}

bool is_name(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '-' || (c >= '0' && c <= '9'); }

/// What an expression is made of, as far as that tells how long it can take. Quoted words count as nothing.
struct Shape {
  int descents = 0, predicates = 0, steps = 0;
  std::string wrong;

  explicit Shape(std::string_view text) {
    int depth = 0, slashes = 0;  // within the predicate at hand
    char quote = 0;
    for (std::size_t at = 0; at < text.size() && wrong.empty(); ++at) {
      const char c = text[at];
      if (quote != 0) {
        if (c == quote) quote = 0;
        continue;
      }
      if (c == '"' || c == '\'') quote = c;
      if (c == '[') {
        ++predicates;
        slashes = 0;
        if (++depth > 1) wrong = "a predicate in a predicate";
        const std::size_t next = text.find_first_not_of(" \t\n(", at + 1);
        if (next != text.npos && text[next] == '/') wrong = "a path from the root in a predicate";
      }
      if (c == ']') --depth;
      if (c == '|') ++steps;
      if (c == '/') slash(text, at, depth > 0, slashes);
      if (c == ':' && at + 1 < text.size() && text[at + 1] == ':') axis(text.substr(0, at), depth > 0);
    }
    if (descents > most_descents) wrong = "more than three ways down through all that is below";
    if (predicates > most_predicates || steps > most_steps) wrong = "more steps or predicates than there may be";
  }

 private:
  void slash(std::string_view text, std::size_t& at, bool within, int& slashes) {
    ++steps;
    const bool twice = at + 1 < text.size() && text[at + 1] == '/';
    if (within && (twice || ++slashes > 1)) wrong = "a path of more than two steps in a predicate";
    if (!twice) return;
    ++descents;
    ++at;
  }

  void axis(std::string_view before, bool within) {
    std::size_t begin = before.size();
    while (begin > 0 && is_name(before[begin - 1])) --begin;
    const std::string_view name = before.substr(begin);
    constexpr std::array<std::string_view, 4> near{"child", "attribute", "self", "parent"};
    constexpr std::array<std::string_view, 4> far{"descendant", "descendant-or-self", "ancestor", "ancestor-or-self"};
    if (std::find(near.begin(), near.end(), name) != near.end()) return;
    if (!within && std::find(far.begin(), far.end(), name) != far.end()) {
      ++descents;
      return;
    }
    wrong = "the axis " + std::string(name.substr(0, 40)) + (within ? " in a predicate" : "");
  }
};

}  // namespace

struct Selecting::Tree {
  pugi::xml_document document;
  std::unordered_map<const void*, Node> nodes;
  std::unordered_map<Node, pugi::xml_node> copies;
  std::size_t bytes = 0;

  void copy(const Document& from, Node node, pugi::xml_node into) {
    ++bytes;
    if (from.kind(node) == NodeKind::text) {
      const std::string text(from.value(node));
      bytes += text.size();
      into.append_child(pugi::node_pcdata).set_value(text.c_str());
      return;
    }
    if (from.kind(node) != NodeKind::element) return;
    pugi::xml_node made = into.append_child(std::string(from.name(node)).c_str());
    nodes.emplace(made.internal_object(), node);
    copies.emplace(node, made);
    for (fiche::Attr a = from.first_attribute(node); a != fiche::none; a = from.next_attribute(a)) {
      const std::string value(from.attribute_value(a));
      bytes += value.size();
      made.append_attribute(std::string(from.attribute_name(a)).c_str()).set_value(value.c_str());
    }
    for (Node c = from.first_child(node); c != fiche::none; c = from.next(c)) copy(from, c, made);
  }
};

Selecting::Selecting(const Document& document) : tree_(std::make_unique<Tree>()) {
  if (document.root() != fiche::none) tree_->copy(document, document.root(), tree_->document);
}
Selecting::~Selecting() = default;

base::Result<std::size_t> Selecting::cost(std::string_view expression) const {
  if (expression.size() > longest)
    return refusal("an XPath of " + std::to_string(expression.size()) + " bytes; " + std::to_string(longest) + " is the most", "");
  const Shape shape(expression);
  if (!shape.wrong.empty())
    return refusal("this XPath has " + shape.wrong + ", which could take for ever", "walk with children and all instead");
  const std::size_t nodes = tree_->nodes.size() + 1;
  const auto times = [](int count) { return static_cast<std::size_t>(count) + 1; };
  const std::size_t walked = nodes * times(shape.steps + 4 * shape.descents);
  // At the worst a predicate looks at all text for every node: [a = b].
  const std::size_t asked = static_cast<std::size_t>(shape.predicates) * (nodes * (tree_->bytes / 64 + 4) + tree_->bytes);
  return walked + asked;
}

base::Result<std::vector<Node>> Selecting::select(const std::string& expression, Node from) const {
  const auto context = tree_->copies.find(from);
  if (context == tree_->copies.end()) return std::vector<Node>{};
  try {
    const pugi::xpath_query query(expression.c_str());
    if (query.return_type() != pugi::xpath_type_node_set)
      return refusal("this XPath gives no elements", "name elements: //step[@on]");
    const pugi::xpath_node_set found = query.evaluate_node_set(context->second);
    std::vector<Node> out;
    for (const pugi::xpath_node& one : found) {
      const pugi::xml_node owner = one.attribute() || one.node().type() != pugi::node_element ? one.parent() : one.node();
      const auto node = tree_->nodes.find(owner.internal_object());
      if (node != tree_->nodes.end()) out.push_back(node->second);
    }
    return out;
  } catch (const pugi::xpath_exception& fault) {
    return refusal("\"" + expression + "\" is no XPath: " + fault.what() + " at letter " + std::to_string(fault.result().offset + 1), "");
  }
}

}  // namespace tamis::lua
