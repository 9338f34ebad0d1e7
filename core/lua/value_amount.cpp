// Amounts and shares (api.inc), and arithmetic on them.
#include <lauxlib.h>
#include <lua.h>

#include <cmath>
#include <string>
#include <vector>

#include "core/base/utf8.h"
#include "core/lua/members.h"
#include "core/lua/values.h"
#include "core/measure/kitchen_tools.h"
#include "core/measure/write.h"

namespace tamis::lua {
namespace {

using base::Ratio;
using measure::Amount;
using measure::Kind;
using measure::Quantity;
using measure::Unit;
using Form = Amount::Form;

const Amount& amount(lua_State* state, int index = 1) { return amount_at(state, index); }

int push_name(lua_State* state, std::string_view name) {
  push(state, name);
  return 1;
}

std::string_view form_name(Form form) {
  switch (form) {
    case Form::exact: return "exact";
    case Form::range: return "range";
    case Form::at_least: return "at_least";
    case Form::at_most: return "at_most";
    case Form::words: break;
  }
  return "words";
}

int push_figure(lua_State* state, const Amount& one, Ratio figure) {
  if (one.has_figure() && figure.ok())
    lua_pushnumber(state, figure.approximate());
  else
    lua_pushnil(state);
  return 1;
}

const Amount& figure_at(lua_State* state, int index) {
  const Amount& one = amount(state, index);
  if (!one.has_figure()) raise(state, "\"" + one.words + "\" has no figure to work with");
  return one;
}

/// An exact number of Lua: whole numbers exactly, others to the nearest millionth.
Ratio number_at(lua_State* state, int index) {
  if (lua_isinteger(state, index) != 0) return Ratio(lua_tointeger(state, index));
  const double figure = luaL_checknumber(state, index);
  if (!(std::abs(figure) < 1e9)) raise(state, "the number is too large to work with");
  for (const std::int64_t below : {1, 2, 3, 4, 6, 8, 12, 16})
    if (const Ratio simple(std::llround(figure * static_cast<double>(below)), below);
        std::abs(simple.approximate() - figure) < 1e-12)
      return simple;
  return Ratio(std::llround(figure * 1e6), 1000000);
}

int push_checked(lua_State* state, Amount made) {
  if (!made.low_base().ok() || !made.high_base().ok()) raise(state, "the figure grows too large to be exact");
  push_amount(state, std::move(made));
  return 1;
}

/// The figures of `like`, each given by its base value in one unit.
Amount in_unit(const Amount& like, Ratio low, Ratio high, const Unit& unit) {
  const auto quantity = [&unit](Ratio in_base) { return Quantity{(in_base - unit.offset) / unit.to_base, &unit}; };
  Amount made;
  made.form = like.form;
  made.about = like.about;
  made.kind = unit.kind;
  if (like.form != Form::at_most) made.low = {quantity(low)};
  if (like.form == Form::range || like.form == Form::at_most) made.high = {quantity(high)};
  return made;
}

/// Form of a sum: ranges win over exact figures; a ceiling and a floor do not add up.
Form form_of_sum(lua_State* state, Form a, Form b) {
  if (a == b || b == Form::exact) return a;
  if (a == Form::exact) return b;
  const bool limits = a != Form::range && b != Form::range;
  if (limits) raise(state, "\"at least\" and \"at most\" do not add up");
  return a == Form::range ? b : a;
}

const Unit& difference_unit() { return *measure::unit_by_id("degc-difference"); }

[[noreturn]] void kinds_differ(lua_State* state, const Amount& a, const Amount& b, const char* what) {
  raise(state, "a " + std::string(measure::kind_name(a.kind)) + " and a " + std::string(measure::kind_name(b.kind)) +
                   " cannot be " + what);
}

/// The unit a sum or difference is given in; raises where there is none.
const Unit& unit_of_sum(lua_State* state, const Amount& a, const Amount& b, bool minus) {
  const char* what = minus ? "subtracted" : "added";
  if (a.kind == b.kind && a.kind != Kind::temperature) return *first_unit(a);
  if (a.kind == Kind::temperature && b.kind == Kind::temperature_difference) return *first_unit(a);
  if (minus && a.kind == Kind::temperature && b.kind == Kind::temperature) return difference_unit();
  if (!minus && a.kind == Kind::temperature_difference && b.kind == Kind::temperature) return *first_unit(b);
  kinds_differ(state, a, b, what);
}

Form turned(Form form) {
  if (form == Form::at_least) return Form::at_most;
  return form == Form::at_most ? Form::at_least : form;
}

int sum(lua_State* state, bool minus) {
  const Amount& a = figure_at(state, 1);
  const Amount& b = figure_at(state, 2);
  const Unit& unit = unit_of_sum(state, a, b, minus);
  Amount like;
  like.form = form_of_sum(state, a.form, minus ? turned(b.form) : b.form);
  like.about = a.about || b.about;
  const Ratio low = minus ? a.low_base() - b.high_base() : a.low_base() + b.low_base();
  const Ratio high = minus ? a.high_base() - b.low_base() : a.high_base() + b.high_base();
  return push_checked(state, in_unit(like, low, high, unit));
}

Amount scaled(lua_State* state, const Amount& one, Ratio factor) {
  if (one.kind == Kind::temperature) raise(state, "a temperature cannot be multiplied; the difference of two can");
  Amount made = one;
  for (std::vector<Quantity>* figures : {&made.low, &made.high})
    for (Quantity& figure : *figures) figure.value = figure.value * factor;
  if (factor < Ratio(0)) {
    std::swap(made.low, made.high);
    if (made.form == Form::exact) std::swap(made.low, made.high);
    made.form = turned(made.form);
  }
  return made;
}

int compare(lua_State* state, bool or_equal) {
  const Amount& a = figure_at(state, 1);
  const Amount& b = figure_at(state, 2);
  if (a.kind != b.kind) kinds_differ(state, a, b, "compared");
  const Ratio left = a.middle_base();
  const Ratio right = b.middle_base();
  lua_pushboolean(state, (or_equal ? left <= right : left < right) ? 1 : 0);
  return 1;
}

const Unit& unit_at(lua_State* state, int index, Kind kind) {
  const std::string_view id = string_at(state, index);
  if (const Unit* unit = measure::unit_by_id(id)) {
    if (unit->kind == kind) return *unit;
    raise(state, std::string(id) + " is a unit of " + std::string(measure::kind_name(unit->kind)) + ", not of " +
                     std::string(measure::kind_name(kind)));
  }
  std::vector<std::string_view> ids;
  for (const Unit& unit : measure::units())
    if (unit.kind == kind) ids.push_back(unit.id);
  no_such(state, "there is no unit", id, ids);
}

measure::Rounded rounded(lua_State* state, Ratio in_base, Kind kind, measure::System system, bool oven,
                         measure::Tolerance tolerance, measure::Toward toward) {
  const measure::KitchenTools& tools = session_of(state).kitchen.tools;
  const auto scale = system == measure::System::metric ? measure::Scale::celsius : measure::Scale::fahrenheit;
  switch (kind) {
    case Kind::mass: return measure::round_mass(in_base, system, tools, tolerance);
    case Kind::volume: return measure::round_volume(in_base, system, tools, tolerance);
    case Kind::length: return measure::round_length(in_base, system, tools);
    default: break;
  }
  return oven ? measure::round_oven(in_base, scale, tools) : measure::round_food_temperature(in_base, scale, tools, toward);
}

}  // namespace

int amount_kind(lua_State* state) { return push_name(state, measure::kind_name(amount(state).kind)); }
int amount_form(lua_State* state) { return push_name(state, form_name(amount(state).form)); }

int amount_about(lua_State* state) {
  lua_pushboolean(state, amount(state).about ? 1 : 0);
  return 1;
}

int amount_words(lua_State* state) {
  const Amount& one = amount(state);
  if (one.has_figure())
    lua_pushnil(state);
  else
    push(state, one.words);
  return 1;
}

int amount_low(lua_State* state) {
  const Amount& one = amount(state);
  return push_figure(state, one, one.has_figure() ? one.low_base() : Ratio());
}

int amount_high(lua_State* state) {
  const Amount& one = amount(state);
  return push_figure(state, one, one.has_figure() ? one.high_base() : Ratio());
}

int amount_middle(lua_State* state) {
  const Amount& one = amount(state);
  return push_figure(state, one, one.has_figure() ? one.middle_base() : Ratio());
}

const Unit* first_unit(const Amount& one) {
  if (!one.low.empty()) return one.low.front().unit;
  return one.high.empty() ? nullptr : one.high.front().unit;
}

int amount_unit(lua_State* state) {
  const Unit* unit = first_unit(amount(state));
  if (unit == nullptr)
    lua_pushnil(state);
  else
    push(state, unit->id);
  return 1;
}

int amount_system(lua_State* state) {
  const Unit* unit = first_unit(amount(state));
  const measure::System system = unit == nullptr ? measure::System::none : unit->system;
  if (system == measure::System::metric)
    push(state, "metric");
  else if (system == measure::System::us)
    push(state, "us");
  else if (system == measure::System::imperial)
    push(state, "imperial");
  else
    lua_pushnil(state);
  return 1;
}

int amount_to(lua_State* state) {
  const Amount& one = figure_at(state, 1);
  const Unit& unit = unit_at(state, 2, one.kind);
  if (measure::is_gas_mark(unit)) raise(state, "gas marks are steps, not a scale; write them with rounded(system, \"oven\")");
  return push_checked(state, in_unit(one, one.low_base(), one.high_base(), unit));
}

int amount_number(lua_State* state) {
  const Amount& one = figure_at(state, 1);
  const Unit& unit = unit_at(state, 2, one.kind);
  lua_pushnumber(state, ((one.middle_base() - unit.offset) / unit.to_base).approximate());
  return 1;
}

int amount_rounded(lua_State* state) {
  const Amount one = amount(state);
  const measure::System system = system_at(state, 2);
  const bool oven = lua_type(state, 3) == LUA_TSTRING && string_at(state, 3) == "oven";
  measure::Tolerance tolerance;
  if (!oven && !lua_isnoneornil(state, 3)) tolerance.share = food::tolerance_of(food_at(state, 3).food->role);
  const bool can = one.kind == Kind::mass || one.kind == Kind::volume || one.kind == Kind::length ||
                   one.kind == Kind::temperature;
  if (!can || !one.has_figure()) {
    lua_settop(state, 1);
    return 1;
  }
  Amount made;
  made.form = one.form;
  made.about = one.about;
  made.kind = one.kind;
  // A limit never lets more pass than it did.
  const auto up = one.form == Form::at_least ? measure::Toward::up : measure::Toward::nearest;
  const auto down = one.form == Form::at_most ? measure::Toward::down : measure::Toward::nearest;
  if (one.form != Form::at_most) made.low = rounded(state, one.low_base(), one.kind, system, oven, tolerance, up).amount.low;
  if (one.form == Form::range || one.form == Form::at_most)
    made.high = rounded(state, one.high_base(), one.kind, system, oven, tolerance, down).amount.low;
  if (made.form == Form::range && made.low == made.high) {
    made.form = Form::exact;
    made.high.clear();
  }
  return push_checked(state, std::move(made));
}

int amount_written(lua_State* state) {
  Session& session = session_of(state);
  measure::Writing writing;
  writing.language = string_at(state, 2, session.main == nullptr ? session.kitchen.reading.language
                                                                 : session.main->fiche().reading.language);
  push(state, measure::write_amount(amount(state), writing));
  return 1;
}

int amount_iso(lua_State* state) {
  const Amount& one = figure_at(state, 1);
  if (one.kind != Kind::time || one.form != Form::exact) raise(state, "iso is for an exact time");
  push(state, measure::write_iso_duration(one));
  return 1;
}

int amounts_added(lua_State* state) { return sum(state, false); }
int amounts_subtracted(lua_State* state) { return sum(state, true); }

int amount_multiplied(lua_State* state) {
  const int of = is(state, 1, Type::amount) ? 1 : 2;
  const Amount& one = figure_at(state, of);
  return push_checked(state, scaled(state, one, number_at(state, 3 - of)));
}

int amount_divided(lua_State* state) {
  const Amount& one = figure_at(state, 1);
  if (!is(state, 2, Type::amount)) {
    const Ratio by = number_at(state, 2);
    if (by == Ratio(0)) raise(state, "an amount divided by nought");
    return push_checked(state, scaled(state, one, Ratio(1) / by));
  }
  const Amount& other = figure_at(state, 2);
  if (one.kind != other.kind || one.kind == Kind::temperature) kinds_differ(state, one, other, "divided");
  const Ratio share = one.middle_base() / other.middle_base();
  if (!share.ok()) raise(state, "an amount divided by nought");
  lua_pushnumber(state, share.approximate());
  return 1;
}

int amount_negated(lua_State* state) { return push_checked(state, scaled(state, figure_at(state, 1), Ratio(-1))); }
int amount_is_less(lua_State* state) { return compare(state, false); }
int amount_is_at_most(lua_State* state) { return compare(state, true); }

namespace {

const ShareValue& share_at(lua_State* state) {
  if (!is(state, 1, Type::share)) raise(state, "wanted share");
  return *static_cast<ShareValue*>(lua_touserdata(state, 1));
}

}  // namespace

int share_form(lua_State* state) {
  using ShareForm = measure::Share::Form;
  const ShareForm form = share_at(state).share.form;
  return push_name(state, form == ShareForm::fraction ? "fraction" : form == ShareForm::rest ? "rest" : "amount");
}

int share_fraction(lua_State* state) {
  const measure::Share& share = share_at(state).share;
  if (share.form == measure::Share::Form::fraction)
    lua_pushnumber(state, share.fraction.approximate());
  else
    lua_pushnil(state);
  return 1;
}

int share_amount(lua_State* state) {
  const measure::Share& share = share_at(state).share;
  if (share.form == measure::Share::Form::amount)
    push_amount(state, share.amount);
  else
    lua_pushnil(state);
  return 1;
}

int share_text(lua_State* state) { return push_name(state, share_at(state).text); }

}  // namespace tamis::lua
