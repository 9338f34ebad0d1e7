#include "core/lua/walk.h"

#include <lua.h>

#include "core/lua/lists.h"
#include "core/lua/meter.h"
#include "core/lua/selecting.h"

namespace tamis::lua {
namespace {

std::vector<std::string_view> kind_names() {
  std::vector<std::string_view> names{"foreign", "unknown"};
  for (const fiche::ElementRule& rule : fiche::element_rules()) names.push_back(rule.name);
  return names;
}

bool is_any_element(const fiche::Document& document, fiche::Node node) {
  const fiche::NodeKind kind = document.kind(node);
  return kind == fiche::NodeKind::element || kind == fiche::NodeKind::foreign;
}

}  // namespace

WantedKinds::WantedKinds(lua_State* state, int first) {
  const int last = lua_gettop(state);
  all_ = first > last;
  for (int i = first; i <= last; ++i) {
    const std::string_view name = string_at(state, i);
    const fiche::El el = fiche::element_named(name);
    if (el == fiche::El::unknown && name != "unknown" && name != "foreign")
      no_such(state, "there is no kind of element", name, kind_names());
    if (name == "foreign")
      foreign_ = true;
    else
      kinds_.set(static_cast<std::size_t>(el));
  }
}

bool WantedKinds::has(const fiche::Document& document, fiche::Node node) const {
  if (document.kind(node) == fiche::NodeKind::foreign) return all_ || foreign_;
  return document.kind(node) == fiche::NodeKind::element &&
         (all_ || kinds_.test(static_cast<std::size_t>(document.el(node))));
}

fiche::Node next_below(const fiche::Document& document, fiche::Node node, fiche::Node top) {
  if (const fiche::Node inner = document.first_child(node); inner != fiche::none) return inner;
  while (node != top && node != fiche::none) {
    if (const fiche::Node beside = document.next(node); beside != fiche::none) return beside;
    node = document.parent(node);
  }
  return fiche::none;
}

std::vector<fiche::Node> elements_below(lua_State* state, const fiche::Document& document, fiche::Node top,
                                        const WantedKinds& wanted) {
  std::vector<fiche::Node> found;
  std::size_t walked = 0;
  for (fiche::Node n = next_below(document, top, top); n != fiche::none; n = next_below(document, n, top)) {
    if (++walked % 64 == 0) spend(state, 16);
    if (is_any_element(document, n) && wanted.has(document, n)) found.push_back(n);
  }
  return found;
}

void Words::add(std::string_view text) {
  const auto blank = [](char c) { return c == ' ' || c == '\t' || c == '\n'; };
  const std::size_t size = text.size();
  for (std::size_t at = 0; at < size;) {
    if (blank(text[at])) {
      space_ = true;
      ++at;
      continue;
    }
    const std::size_t start = at;  // of words with one space between: they go over as they are
    for (; at < size; ++at) {
      const char c = text[at];
      if (c == '\n' || c == '\t' || (c == ' ' && (at + 1 == size || blank(text[at + 1])))) break;
    }
    if (space_ && !text_.empty()) text_ += ' ';
    space_ = false;
    text_.append(text, start, at - start);
  }
}

std::string plain_words(std::string_view text) {
  Words words;
  words.add(text);
  return words.text();
}

void add_words_below(lua_State* state, const fiche::Document& document, fiche::Node top, Words& words) {
  std::size_t walked = 0;
  for (fiche::Node n = next_below(document, top, top); n != fiche::none; n = next_below(document, n, top)) {
    if (++walked % 64 == 0) spend(state, 64);
    if (document.kind(n) == fiche::NodeKind::text) words.add(document.value(n));
  }
}

int push_selected(lua_State* state, Opened& opened, fiche::Node from, int index) {
  const std::string expression(string_at(state, index));
  const Selecting& selecting = opened.selecting();
  const auto cost = selecting.cost(expression);
  if (!cost) raise(state, cost.fault().message);
  spend(state, *cost);
  const auto found = selecting.select(expression, from);
  if (!found) raise(state, found.fault().message);
  return push_elements(state, opened, *found);
}

int push_elements(lua_State* state, Opened& opened, const std::vector<fiche::Node>& nodes) {
  return push_list(state, nodes, [&](fiche::Node node) { push_element(state, opened, node); });
}

}  // namespace tamis::lua
