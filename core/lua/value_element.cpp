// What every element has: its names, attributes, measures and places (api.inc).
#include <lua.h>

#include <vector>

#include "core/fiche/prose.h"
#include "core/lua/lists.h"
#include "core/lua/members.h"
#include "core/lua/meter.h"
#include "core/lua/values.h"
#include "core/lua/walk.h"

namespace tamis::lua {
namespace {

using fiche::At;
using fiche::Document;
using fiche::El;
using fiche::Node;
using fiche::NodeKind;

const Document& document_of(const NodeValue& value) { return value.opened->document(); }

int push_words(lua_State* state, std::string_view words) {
  spend(state, words.size() / 16);
  push(state, plain_words(words));
  return 1;
}

/// The attribute that a call names; none when the element has it not. A name that its kind cannot have is an error.
fiche::Attr attribute_at(lua_State* state, const NodeValue& value, int index) {
  const Document& document = document_of(value);
  const std::string_view name = string_at(state, index);
  const El el = document.el(value.node);
  if (el == El::unknown || name.find(':') != std::string_view::npos) {
    if (document.kind(value.node) == NodeKind::foreign) return fiche::none;
    for (fiche::Attr a = document.first_attribute(value.node); a != fiche::none; a = document.next_attribute(a))
      if (document.attribute_name(a) == name) return a;
    return fiche::none;
  }
  const At at = fiche::attribute_named(name);
  if (at != At::unknown && fiche::element_rule(el).attribute(at) != nullptr) return document.find(value.node, at);
  std::vector<std::string_view> names;
  for (const fiche::AttributeRule& rule : fiche::element_rule(el).attributes) names.push_back(fiche::name_of(rule.at));
  no_such(state, "<" + std::string(document.name(value.node)) + "> has no attribute", name, names);
}

Node component_of(const Document& document, Node node) {
  while (node != fiche::none && document.el(node) != El::component) node = document.parent(node);
  return node;
}

int push_statement(lua_State* state, const Opened& opened, const fiche::Statement* statement) {
  if (statement == nullptr) {
    lua_pushnil(state);
    return 1;
  }
  if (statement->fault) {
    lua_pushnil(state);
    push(state, statement->fault->message);
    return 2;
  }
  if (statement->value == fiche::Value::number)
    lua_pushnumber(state, statement->amount->low_base().approximate());
  else if (statement->value == fiche::Value::length)
    return push_list(state, statement->lengths, [&](const measure::Amount& one) { push_amount_of(state, opened, one); });
  else if (statement->share)
    push_share(state, *statement->share, statement->text);
  else
    push_amount_of(state, opened, *statement->amount);
  return 1;
}

}  // namespace

int element_kind(lua_State* state) {
  const NodeValue& value = element_at(state, 1);
  const El el = document_of(value).el(value.node);
  if (el != El::unknown)
    push(state, fiche::name_of(el));
  else
    push(state, document_of(value).kind(value.node) == NodeKind::foreign ? "foreign" : "unknown");
  return 1;
}

int element_name(lua_State* state) {
  const NodeValue& value = element_at(state, 1);
  push(state, document_of(value).name(value.node));
  return 1;
}

int element_id(lua_State* state) {
  const NodeValue& value = element_at(state, 1);
  const fiche::Attr id = document_of(value).find(value.node, At::id);
  if (id == fiche::none)
    lua_pushnil(state);
  else
    push(state, document_of(value).attribute_value(id));
  return 1;
}

int element_text(lua_State* state) {
  const NodeValue& value = element_at(state, 1);
  const Document& document = document_of(value);
  if (document.kind(value.node) == NodeKind::foreign) {
    push(state, document.value(value.node));
    return 1;
  }
  Words words;
  add_words_below(state, document, value.node, words);
  spend(state, words.text().size() / 16);
  push(state, words.text());
  return 1;
}

int element_own_text(lua_State* state) {
  const NodeValue& value = element_at(state, 1);
  return push_words(state, document_of(value).direct_text(value.node));
}

int element_parent(lua_State* state) {
  const NodeValue& value = element_at(state, 1);
  const Node parent = document_of(value).parent(value.node);
  push_element(state, *value.opened, parent == document_of(value).top() ? fiche::none : parent);
  return 1;
}

int element_component(lua_State* state) {
  const NodeValue& value = element_at(state, 1);
  push_element(state, *value.opened, component_of(document_of(value), value.node));
  return 1;
}

int element_fiche(lua_State* state) {
  const NodeValue& value = element_at(state, 1);
  if (value.opened->is_fiche())
    push_fiche(state, *value.opened);
  else
    lua_pushnil(state);
  return 1;
}

int element_place(lua_State* state) {
  push_place(state, place_at(state, 1));
  return 1;
}

int element_mark(lua_State* state) {
  const NodeValue& value = element_at(state, 1);
  lua_pushboolean(state, fiche::is_mark(document_of(value), value.node) ? 1 : 0);
  return 1;
}

int element_get(lua_State* state) {
  const NodeValue& value = element_at(state, 1);
  const fiche::Attr found = attribute_at(state, value, 2);
  if (found == fiche::none)
    lua_pushnil(state);
  else
    push(state, document_of(value).attribute_value(found));
  return 1;
}

int element_attributes(lua_State* state) {
  const NodeValue& value = element_at(state, 1);
  const Document& document = document_of(value);
  ListMaker list(state);
  if (document.kind(value.node) != NodeKind::element) return 1;
  for (fiche::Attr a = document.first_attribute(value.node); a != fiche::none; a = document.next_attribute(a)) {
    push(state, document.attribute_name(a));
    list.add();
  }
  return 1;
}

int element_value(lua_State* state) {
  const NodeValue& value = element_at(state, 1);
  if (lua_isnoneornil(state, 2)) return push_statement(state, *value.opened, value.opened->fiche().statement(value.node));
  const fiche::Attr found = attribute_at(state, value, 2);
  if (found == fiche::none) {
    lua_pushnil(state);
    return 1;
  }
  const fiche::Statement* statement = value.opened->fiche().statement(value.node, document_of(value).at(found));
  if (statement != nullptr) return push_statement(state, *value.opened, statement);
  lua_pushnil(state);
  push(state, "this attribute states no measure");
  return 2;
}

int element_place_of(lua_State* state) {
  const NodeValue& value = element_at(state, 1);
  const fiche::Attr found = attribute_at(state, value, 2);
  if (found == fiche::none)
    push_place(state, place_at(state, 1));
  else
    push_place(state, {Type::place, true, true, value.opened, document_of(value).value_span(found)});
  return 1;
}

}  // namespace tamis::lua
