// What ingredients, components and steps have besides: food, amount, masses through the flow (api.inc).
#include <lua.h>

#include <algorithm>

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

const Document& document_of(const NodeValue& value) { return value.opened->document(); }

std::string_view first_of(std::string_view list, char separator) { return list.substr(0, list.find(separator)); }

std::string food_name(const Session& session, std::string_view id, std::string_view language) {
  const food::Food* food = id.empty() ? nullptr : session.kitchen.find_food(id);
  if (food == nullptr) return std::string(id);
  const fiche::Kitchen::OwnFood* own = session.kitchen.own_food(id);
  if (own != nullptr && !own->name.empty()) return own->name;
  const bool french = language.starts_with("fr") && !food->french.empty();
  return std::string(first_of(french ? food->french : food->english, '|'));
}

std::string label_of(Opened& opened, Node node);

/// A use is called by its words, else by what it names.
std::string use_label(Opened& opened, Node node) {
  const Document& document = opened.document();
  std::string words = plain_words(document.all_text(node));
  if (!words.empty()) return words;
  const std::string_view of = first_of(document.get(node, At::of), ' ');
  const auto found = opened.fiche().ids.find(of);
  return found == opened.fiche().ids.end() || found->second == node ? std::string(of) : label_of(opened, found->second);
}

std::string label_of(Opened& opened, Node node) {
  const Document& document = opened.document();
  switch (document.el(node)) {
    case El::component: return std::string(document.get(node, At::title));
    case El::step: return std::string(first_of(document.get(node, At::makes), ' '));
    case El::use: return use_label(opened, node);
    case El::tool:
    case El::equipment: {
      std::string words = plain_words(document.all_text(node));
      return words.empty() ? std::string(document.get(node, At::id)) : words;
    }
    default: break;
  }
  if (const std::string_view name = document.get(node, At::name); !name.empty()) return plain_words(name);
  std::string name = food_name(opened.session(), document.get(node, At::food), opened.fiche().reading.language);
  return name.empty() ? std::string(document.get(node, At::id)) : name;
}

const measure::Amount* amount_in(const fiche::Statement* statement) {
  if (statement == nullptr) return nullptr;
  if (statement->amount) return &*statement->amount;
  return statement->lengths.empty() ? nullptr : &statement->lengths.front();
}

int push_statement_amount(lua_State* state, const Opened& opened, const fiche::Statement* statement) {
  const measure::Amount* amount = amount_in(statement);
  if (amount == nullptr)
    lua_pushnil(state);
  else
    push_amount_of(state, opened, *amount);
  return 1;
}

template <class List, class Taken>
std::optional<flow::Grams> sum_of(const List& list, Taken taken) {
  std::optional<flow::Grams> sum;
  for (const auto& one : list) {
    if (!taken(one)) continue;
    if (!one.grams) return std::nullopt;
    if (!sum) sum = flow::Grams{};
    sum->low += one.grams->low;
    sum->high += one.grams->high;
  }
  return sum;
}

std::optional<flow::Grams> mass_of(lua_State* state, Opened& opened, Node node) {
  const flow::Flow& flow = opened.flow();
  switch (opened.document().el(node)) {
    case El::component: {
      for (const flow::Total& total : flow.components)
        if (total.node == node) return total.out;
      return std::nullopt;
    }
    case El::use:
      spend(state, flow.uses.size());
      return sum_of(flow.uses, [node](const flow::Use& use) { return use.mark == node; });
    case El::loss:
      for (const flow::Step& step : flow.steps) {
        spend(state, 1);
        for (const flow::Lost& lost : step.losses)
          if (lost.node == node) return lost.grams;
      }
      return std::nullopt;
    default: break;
  }
  const int thing = flow.thing_of(node);
  return thing < 0 ? std::nullopt : flow.things[static_cast<std::size_t>(thing)].grams;
}

const flow::Step* flow_step(const NodeValue& value) {
  const flow::Flow& flow = value.opened->flow();
  const int at = flow.step_of(value.node);
  return at < 0 ? nullptr : &flow.steps[static_cast<std::size_t>(at)];
}

/// A step argument, also where the call was taken from another value.
const NodeValue& step_at(lua_State* state) {
  const NodeValue& value = element_at(state, 1);
  if (document_of(value).el(value.node) != El::step) raise(state, "wanted a step");
  return value;
}

const std::vector<std::string_view>& no_words() {
  static const std::vector<std::string_view> none;
  return none;
}

}  // namespace

int element_label(lua_State* state) {
  const NodeValue& value = element_at(state, 1);
  push(state, label_of(*value.opened, value.node));
  return 1;
}

int element_title(lua_State* state) {
  const NodeValue& value = element_at(state, 1);
  if (document_of(value).el(value.node) == El::fiche) {
    const Node title = document_of(value).child(value.node, El::title);
    push(state, title == fiche::none ? "" : plain_words(document_of(value).all_text(title)));
  } else {
    push(state, plain_words(document_of(value).get(value.node, At::title)));
  }
  return 1;
}

int element_food(lua_State* state) {
  const NodeValue& value = element_at(state, 1);
  const std::string_view id = document_of(value).get(value.node, At::food);
  push_food(state, id.empty() ? nullptr : value.opened->session().kitchen.find_food(id));
  return 1;
}

int element_amount(lua_State* state) {
  const NodeValue& value = element_at(state, 1);
  return push_statement_amount(state, *value.opened, value.opened->fiche().statement(value.node));
}

int element_unit(lua_State* state) {
  const NodeValue& value = element_at(state, 1);
  const measure::Amount* amount = amount_in(value.opened->fiche().statement(value.node));
  const measure::Unit* unit = amount == nullptr ? nullptr : first_unit(*amount);
  if (unit == nullptr)
    lua_pushnil(state);
  else
    push(state, unit->id);
  return 1;
}

int element_also(lua_State* state) {
  const NodeValue& value = element_at(state, 1);
  return push_statement_amount(state, *value.opened, value.opened->fiche().statement(value.node, At::also));
}

int element_counts(lua_State* state) {
  const NodeValue& value = element_at(state, 1);
  Node node = value.node;
  if (document_of(value).el(node) == El::part) node = document_of(value).parent(node);
  const std::string_view purpose = document_of(value).get(node, At::purpose);
  lua_pushboolean(state, purpose.empty() || purpose == "food" ? 1 : 0);
  return 1;
}

int element_mass(lua_State* state) {
  const NodeValue& value = element_at(state, 1);
  push_mass(state, mass_of(state, *value.opened, value.node));
  return 1;
}

int element_number(lua_State* state) {
  const NodeValue& value = element_at(state, 1);
  const Document& document = document_of(value);
  lua_Integer number = 1;
  for (Node n = document.previous(value.node); n != fiche::none; n = document.previous(n)) {
    if (document.el(n) == document.el(value.node)) ++number;
    if (number % 64 == 0) spend(state, 16);
  }
  lua_pushinteger(state, number);
  return 1;
}

int element_mass_in(lua_State* state) {
  const flow::Step* step = flow_step(step_at(state));
  push_mass(state, step == nullptr ? std::nullopt : step->in);
  return 1;
}

int element_mass_out(lua_State* state) {
  const flow::Step* step = flow_step(step_at(state));
  push_mass(state, step == nullptr ? std::nullopt : step->out);
  return 1;
}

int element_targets(lua_State* state) {
  const NodeValue& value = element_at(state, 1);
  const auto& ids = value.opened->fiche().ids;
  std::string_view names = document_of(value).el(value.node) == El::use ? document_of(value).get(value.node, At::of) : "";
  ListMaker list(state);
  while (!names.empty()) {
    const std::string_view name = first_of(names, ' ');
    names.remove_prefix(std::min(name.size() + 1, names.size()));
    const auto found = ids.find(name);
    if (name.empty() || found == ids.end()) continue;
    push_element(state, *value.opened, found->second);
    list.add();
  }
  return 1;
}

int element_actions(lua_State* state) {
  const NodeValue& value = step_at(state);
  const fiche::Step* step = value.opened->step(value.node);
  return push_list(state, step == nullptr ? no_words() : step->actions, [state](std::string_view one) { push(state, one); });
}

int element_makes(lua_State* state) {
  const NodeValue& value = step_at(state);
  const fiche::Step* step = value.opened->step(value.node);
  return push_list(state, step == nullptr ? no_words() : step->makes, [state](std::string_view one) { push(state, one); });
}

int element_takes(lua_State* state) {
  const NodeValue& value = step_at(state);
  const flow::Step* step = flow_step(value);
  return push_list(state, step == nullptr ? std::vector<int>() : step->takes,
                   [&](int use) { push_indexed(state, Type::taking, *value.opened, use); });
}

int element_gives(lua_State* state) {
  const NodeValue& value = step_at(state);
  const flow::Step* step = flow_step(value);
  return push_list(state, step == nullptr ? std::vector<int>() : step->gives,
                   [&](int thing) { push_indexed(state, Type::thing, *value.opened, thing); });
}

int element_waits_for(lua_State* state) {
  const NodeValue& value = step_at(state);
  const flow::Step* step = flow_step(value);
  const flow::Flow& flow = value.opened->flow();
  return push_list(state, step == nullptr ? std::vector<int>() : step->waits_for, [&](int other) {
    push_element(state, *value.opened, flow.steps[static_cast<std::size_t>(other)].node);
  });
}

int element_losses(lua_State* state) {
  const NodeValue& value = step_at(state);
  const flow::Step* step = flow_step(value);
  return push_list(state, step == nullptr ? std::vector<flow::Lost>() : step->losses,
                   [&](const flow::Lost& lost) { push_element(state, *value.opened, lost.node); });
}

}  // namespace tamis::lua
