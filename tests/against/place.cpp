#include "tests/against/place.h"

#include <cassert>
#include <string>

namespace tamis::tests {
namespace {

using fiche::Document;
using fiche::Node;

struct Wanted {
  std::string_view attribute;
  std::string_view value;
  bool any = false;  ///< the attribute is there, whatever its value
};

struct Step {
  std::string_view name;
  std::vector<Wanted> attributes;
  std::string_view words;
};

/// What stands up to the closing mark, which is taken along.
std::string_view take_until(std::string_view& text, char mark) {
  const std::size_t end = text.find(mark);
  assert(end != std::string_view::npos);
  const std::string_view inside = text.substr(0, end);
  text.remove_prefix(end + 1);
  return inside;
}

Wanted wanted(std::string_view text) {
  const std::size_t equals = text.find('=');
  if (equals == std::string_view::npos) return {text, {}, true};
  return {text.substr(0, equals), text.substr(equals + 1), false};
}

Step take_step(std::string_view& text) {
  Step step;
  step.name = text.substr(0, text.find_first_of("#[{ "));
  text.remove_prefix(step.name.size());
  while (!text.empty() && text.front() != ' ') {
    const char mark = text.front();
    text.remove_prefix(1);
    if (mark == '[') {
      step.attributes.push_back(wanted(take_until(text, ']')));
    } else if (mark == '{') {
      step.words = take_until(text, '}');
    } else {
      const std::string_view id = text.substr(0, text.find_first_of("[{ "));
      step.attributes.push_back({"id", id, false});
      text.remove_prefix(id.size());
    }
  }
  if (!text.empty()) text.remove_prefix(1);
  return step;
}

bool has(const Document& document, Node n, const Wanted& wanted) {
  for (fiche::Attr a = document.first_attribute(n); a != fiche::none; a = document.next_attribute(a)) {
    if (document.attribute_name(a) != wanted.attribute) continue;
    return wanted.any || document.attribute_value(a) == wanted.value;
  }
  return false;
}

std::string one_space(const std::string& text) {
  std::string out;
  for (const char c : text) {
    const bool blank = c == ' ' || c == '\n' || c == '\t';
    if (!blank || (!out.empty() && out.back() != ' ')) out += blank ? ' ' : c;
  }
  return out;
}

bool matches(const Document& document, Node n, const Step& step) {
  if (document.kind(n) != fiche::NodeKind::element || document.name(n) != step.name) return false;
  for (const Wanted& attribute : step.attributes) {
    if (!has(document, n, attribute)) return false;
  }
  return step.words.empty() || one_space(document.all_text(n)).find(step.words) != std::string::npos;
}

void collect(const Document& document, Node inside, const std::vector<Step>& steps, std::size_t depth,
             std::vector<Node>& out) {
  for (Node c = document.first_child(inside); c != fiche::none; c = document.next(c)) {
    if (matches(document, c, steps[depth])) {
      if (depth + 1 == steps.size()) {
        out.push_back(c);
      } else {
        collect(document, c, steps, depth + 1, out);
      }
    }
    collect(document, c, steps, depth, out);
  }
}

}  // namespace

std::vector<Node> at_place(const Document& document, std::string_view place) {
  std::vector<Step> steps;
  while (!place.empty()) steps.push_back(take_step(place));
  std::vector<Node> out;
  if (!steps.empty()) collect(document, document.top(), steps, 0, out);
  return out;
}

}  // namespace tamis::tests
