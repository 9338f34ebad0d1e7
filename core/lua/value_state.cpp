// What becomes of the food: temperature, composition, allergens of steps, things and takings (api.inc, core/flow/states.h).
#include <lua.h>

#include <array>
#include <cmath>

#include "core/lua/lists.h"
#include "core/lua/members.h"
#include "core/lua/meter.h"
#include "core/lua/values.h"

namespace tamis::lua {
namespace {

using fiche::El;
using flow::State;

constexpr std::size_t idx(int i) { return static_cast<std::size_t>(i); }

/// Working it out the first time costs about as much as reading the flow.
const flow::States& states_of(lua_State* state, Opened& opened) {
  spend(state, opened.flow().uses.size());
  return opened.states();
}

int use_of(const flow::Flow& flow, fiche::Node mark) {
  for (std::size_t i = 0; i < flow.uses.size(); ++i) {
    if (flow.uses[i].mark == mark) return static_cast<int>(i);
  }
  return -1;
}

/// Of a step what comes of it, of a use what goes in; null where the flow does not know it.
const State* state_at(lua_State* state, const NodeValue& value) {
  const flow::States& states = states_of(state, *value.opened);
  const flow::Flow& flow = value.opened->flow();
  switch (value.opened->document().el(value.node)) {
    case El::step: {
      const int step = flow.step_of(value.node);
      return step < 0 ? nullptr : &states.steps[idx(step)];
    }
    case El::use: {
      const int use = use_of(flow, value.node);
      return use < 0 ? nullptr : &states.uses[idx(use)];
    }
    default: {
      const int thing = flow.thing_of(value.node);
      return thing < 0 ? nullptr : &states.things[idx(thing)];
    }
  }
}

const State& thing_state(lua_State* state) {
  const IndexValue& value = indexed_at(state, 1, Type::thing);
  return states_of(state, *value.opened).things[idx(value.index)];
}

const State& taking_state(lua_State* state) {
  const IndexValue& value = indexed_at(state, 1, Type::taking);
  return states_of(state, *value.opened).uses[idx(value.index)];
}

int push_temperature(lua_State* state, const State* known) {
  using Form = measure::Amount::Form;
  const bool low = known != nullptr && std::isfinite(known->celsius.low), high = known != nullptr && std::isfinite(known->celsius.high);
  if (!low && !high) {
    lua_pushnil(state);
    return 1;
  }
  const measure::Unit& unit = *measure::unit_by_id("degc");
  const auto figure = [](double celsius) { return base::Ratio(std::llround(celsius * 10), 10); };
  measure::Amount amount = measure::amount_of(figure(low ? known->celsius.low : known->celsius.high), unit);
  if (!low) {
    amount.form = Form::at_most;
    amount.high = std::move(amount.low);
    amount.low.clear();
  } else if (!high) {
    amount.form = Form::at_least;
  } else if (const base::Ratio end = figure(known->celsius.high); !(end == amount.low.front().value)) {
    amount.form = Form::range;
    amount.high = {{end, &unit}};
  }
  push_amount(state, std::move(amount));
  return 1;
}

int push_share_of(lua_State* state, const State* known, std::string_view what) {
  std::array<std::string_view, flow::constituents> names;
  for (std::size_t i = 0; i < flow::constituents; ++i) {
    const auto constituent = static_cast<flow::Constituent>(i);
    names[i] = flow::constituent_name(constituent);
    if (names[i] != what) continue;
    lua_pushnumber(state, known == nullptr ? 0 : known->share(constituent).low);
    lua_pushnumber(state, known == nullptr ? 1 : known->share(constituent).high);
    return 2;
  }
  no_such(state, "food is not made of", what, names);
}

void push_allergen_ids(lua_State* state, food::Allergens bits) {
  ListMaker list(state);
  for (const food::AllergenName& name : food::allergen_names()) {
    if ((bits & name.bit) == 0) continue;
    push(state, name.id);
    list.add();
  }
}

int push_allergens(lua_State* state, const State* known) {
  push_allergen_ids(state, known == nullptr ? 0 : known->sure);
  push_allergen_ids(state, known == nullptr ? 0 : known->assumed & ~known->sure);
  push_allergen_ids(state, known == nullptr ? 0 : known->may & ~(known->sure | known->assumed));
  return 3;
}

}  // namespace

int element_temperature(lua_State* state) { return push_temperature(state, state_at(state, element_at(state, 1))); }

int element_heated_to(lua_State* state) {
  const State* known = state_at(state, element_at(state, 1));
  if (known == nullptr || !std::isfinite(known->heat.celsius)) lua_pushnil(state);
  else lua_pushnumber(state, known->heat.celsius);
  return 1;
}

int element_share_of(lua_State* state) {
  return push_share_of(state, state_at(state, element_at(state, 1)), string_at(state, 2));
}

int element_allergens(lua_State* state) { return push_allergens(state, state_at(state, element_at(state, 1))); }

int element_why_open(lua_State* state) {
  constexpr std::array<std::string_view, 3> figures{"mass", "composition", "temperature"};
  const NodeValue& value = element_at(state, 1);
  const std::string_view what = string_at(state, 2);
  const State* known = state_at(state, value);
  const flow::Why none;
  const std::array<const flow::Why*, 3> whys{known == nullptr ? &none : &known->why_grams,
                                             known == nullptr ? &none : &known->why_shares,
                                             known == nullptr ? &none : &known->why_celsius};
  for (std::size_t i = 0; i < figures.size(); ++i) {
    if (figures[i] != what) continue;
    if (whys[i]->any()) push(state, flow::tell(*whys[i], value.opened->fiche(), value.opened->flow()));
    else lua_pushnil(state);
    return 1;
  }
  no_such(state, "a food has no", what, figures);
}

int thing_temperature(lua_State* state) { return push_temperature(state, &thing_state(state)); }

int thing_share_of(lua_State* state) { return push_share_of(state, &thing_state(state), string_at(state, 2)); }

int thing_allergens(lua_State* state) { return push_allergens(state, &thing_state(state)); }

int taking_temperature(lua_State* state) { return push_temperature(state, &taking_state(state)); }

int taking_share_of(lua_State* state) { return push_share_of(state, &taking_state(state), string_at(state, 2)); }

}  // namespace tamis::lua
