// What a conversion does to the fiche it was given (api.inc). The result is held against the document rules before
// anyone sees it (core/lua/plugin.h).
#include <lua.h>

#include "core/base/utf8.h"
#include "core/format/format.h"
#include "core/lua/members.h"
#include "core/lua/meter.h"
#include "core/lua/values.h"

namespace tamis::lua {
namespace {

using fiche::Document;
using fiche::Node;
using fiche::NodeKind;

/// The element a call changes.
NodeValue& changing(lua_State* state) {
  NodeValue& value = element_at(state, 1);
  if (!value.opened->may_change()) raise(state, "only a conversion may change the fiche it was given");
  spend(state, 50);  // what was read of the fiche is read again
  return value;
}

NodeValue& changing_inside(lua_State* state) {
  NodeValue& value = changing(state);
  if (value.opened->document().kind(value.node) != NodeKind::element)
    raise(state, "a house's own element can only be removed");
  return value;
}

/// The child a new node comes before; none: at the end.
Node before_at(lua_State* state, const NodeValue& parent, int index) {
  if (lua_isnoneornil(state, index)) return fiche::none;
  const NodeValue& before = is(state, index, Type::text) ? text_at(state, index) : element_at(state, index);
  if (before.opened != parent.opened || before.opened->document().parent(before.node) != parent.node)
    raise(state, "what the new one comes before is not in this element");
  return before.node;
}

bool is_too_deep(const Document& document, Node node) {
  std::size_t depth = 2;  // the new one, and the top
  for (; node != document.top() && node != fiche::none; node = document.parent(node)) ++depth;
  return depth > format::most_depth;
}

/// What edits write is bounded: by what a file may be, and by what is worth judging of one that was small.
void grow(lua_State* state, std::size_t bytes) {
  constexpr std::size_t most_new = std::size_t{1} << 20U;
  Session& session = session_of(state);
  session.written += bytes;
  if (session.written > most_new + 4 * session.main->document().source().bytes().size())
    raise(state, "the fiche grows too large: a conversion may write a megabyte, and four times what was there");
}

}  // namespace

void check_words(lua_State* state, std::string_view words) {
  for (std::size_t at = 0; at < words.size();) {
    if (static_cast<unsigned char>(words[at]) >= 0x20 && static_cast<unsigned char>(words[at]) < 0x80) {
      ++at;
      continue;
    }
    const auto scalar = base::next_scalar(words, at);
    if (!scalar) raise(state, "the text is not valid UTF-8");
    if ((*scalar < 0x20 && *scalar != '\t' && *scalar != '\n') || *scalar == 0xFFFE || *scalar == 0xFFFF)
      raise(state, "the text holds a control character");
  }
}

std::string_view new_words_at(lua_State* state, int index) {
  const std::string_view words = string_at(state, index);
  spend(state, words.size() / 8);
  grow(state, words.size());
  check_words(state, words);
  return words;
}

int element_set(lua_State* state) {
  NodeValue& value = changing_inside(state);
  const Document& document = value.opened->document();
  const std::string_view name = string_at(state, 2);
  const fiche::At at = fiche::attribute_named(name);
  const fiche::El el = document.el(value.node);
  if (el == fiche::El::unknown || at == fiche::At::unknown || fiche::element_rule(el).attribute(at) == nullptr) {
    std::vector<std::string_view> names;
    if (el != fiche::El::unknown)
      for (const fiche::AttributeRule& rule : fiche::element_rule(el).attributes) names.push_back(fiche::name_of(rule.at));
    no_such(state, "<" + std::string(document.name(value.node)) + "> has no attribute", name, names);
  }
  if (lua_isnoneornil(state, 3)) {
    if (document.find(value.node, at) != fiche::none) value.opened->edit().remove_attribute(value.node, at);
  } else {
    const std::string_view words = new_words_at(state, 3);
    value.opened->edit().set_attribute(value.node, at, words);
  }
  return 0;
}

int element_set_text(lua_State* state) {
  NodeValue& value = changing_inside(state);
  const std::string_view words = new_words_at(state, 2);
  value.opened->edit().set_text(value.node, words);
  return 0;
}

int element_add(lua_State* state) {
  NodeValue& value = changing_inside(state);
  const std::string_view kind = string_at(state, 2);
  const fiche::El el = fiche::element_named(kind);
  const fiche::El parent = value.opened->document().el(value.node);
  if (el == fiche::El::unknown || parent == fiche::El::unknown || !fiche::element_rule(parent).may_hold(el)) {
    std::vector<std::string_view> names;
    if (parent != fiche::El::unknown)
      for (const fiche::El child : fiche::element_rule(parent).children) names.push_back(fiche::name_of(child));
    no_such(state, "<" + std::string(value.opened->document().name(value.node)) + "> holds no", kind, names);
  }
  if (is_too_deep(value.opened->document(), value.node)) raise(state, "elements stand too deep in each other");
  const Node before = before_at(state, value, 3);
  grow(state, 16 + kind.size());
  push_element(state, *value.opened, value.opened->edit().add_element(value.node, el, before));
  return 1;
}

int element_add_text(lua_State* state) {
  NodeValue& value = changing_inside(state);
  const std::string_view words = new_words_at(state, 2);
  const Node before = before_at(state, value, 3);
  push_text(state, *value.opened, value.opened->edit().add_text(value.node, words, before));
  return 1;
}

int element_remove(lua_State* state) {
  NodeValue& value = changing(state);
  const Document& document = value.opened->document();
  if (value.node == document.root()) raise(state, "the <fiche> itself cannot be removed");
  if (document.parent(value.node) == fiche::none) raise(state, "it was removed before");
  value.opened->edit().remove(value.node);
  return 0;
}

}  // namespace tamis::lua
