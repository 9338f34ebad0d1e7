#include "core/lua/values.h"

#include <lauxlib.h>
#include <lua.h>

#include <algorithm>
#include <array>
#include <bitset>
#include <cmath>
#include <cstdlib>
#include <new>
#include <vector>

#include "core/base/nearest.h"
#include "core/fiche/vocabulary.h"
#include "core/lua/members.h"
#include "core/measure/unit.h"

namespace tamis::lua {
namespace {

constexpr Member all[] = {
#define TAMIS_FIELD(type, name, kinds, words, doc) {Type::type, #name, kinds, words, doc, false, type##_##name},
#define TAMIS_CALL(type, name, kinds, words, doc) {Type::type, #name, kinds, words, doc, true, type##_##name},
#include "core/lua/api.inc"
#undef TAMIS_FIELD
#undef TAMIS_CALL
};

constexpr std::array<std::string_view, 13> type_names{"tamis",  "settings", "fiche", "element", "text",  "place", "finding",
                                                      "amount", "share",    "food",  "kitchen", "thing", "taking"};
constexpr std::array<char, type_names.size()> keys{};  // their addresses are keys of the registry
constexpr char stated_key = 0;                         // and of amounts that need no end

const void* key_of(Type type) { return &keys[static_cast<std::size_t>(type)]; }

using Kinds = std::bitset<256>;

bool has_word(std::string_view words, std::string_view wanted) {
  while (!words.empty()) {
    const std::size_t end = std::min(words.find(' '), words.size());
    if (words.substr(0, end) == wanted) return true;
    words.remove_prefix(std::min(end + 1, words.size()));
  }
  return false;
}

/// For each member of `all`, the elements that have it.
const std::vector<Kinds>& kinds_of_members() {
  static const std::vector<Kinds> made = [] {
    std::vector<Kinds> out;
    for (const Member& member : all) {
      Kinds kinds;
      for (const fiche::ElementRule& rule : fiche::element_rules())
        if (member.kinds.empty() || has_word(member.kinds, rule.name)) kinds.set(static_cast<std::size_t>(rule.el));
      if (member.kinds.empty()) kinds.set();
      out.push_back(kinds);
    }
    return out;
  }();
  return made;
}

Type type_at(lua_State* state, int index) { return *static_cast<const Type*>(lua_touserdata(state, index)); }

[[noreturn]] void no_such_member(lua_State* state, Type type) {
  std::vector<std::string_view> names;
  for (const Member& member : all)
    if (member.type == type) names.push_back(member.name);
  const std::string typed = lua_type(state, 2) == LUA_TSTRING ? std::string(string_at(state, 2)) : luaL_typename(state, 2);
  no_such(state, std::string(type_name(type)) + " has no", typed, names);
}

void check_kind(lua_State* state, const Member& member) {
  if (member.kinds.empty()) return;
  const NodeValue& value = element_at(state, 1);
  const fiche::El el = value.opened->document().el(value.node);
  if (kinds_of_members()[static_cast<std::size_t>(&member - all)].test(static_cast<std::size_t>(el))) return;
  std::string have(member.kinds);
  std::replace(have.begin(), have.end(), ' ', ',');
  raise(state, "<" + std::string(value.opened->document().name(value.node)) + "> has no \"" +
                   std::string(member.name) + "\"; it is there for " + have);
}

/// Upvalue 1: names to members.
int index_value(lua_State* state) {
  lua_pushvalue(state, 2);
  if (lua_rawget(state, lua_upvalueindex(1)) != LUA_TLIGHTUSERDATA) no_such_member(state, type_at(state, 1));
  const Member& member = *static_cast<const Member*>(lua_touserdata(state, -1));
  check_kind(state, member);
  if (member.call) {
    lua_pushcfunction(state, member.function);
    return 1;
  }
  lua_settop(state, 1);
  return member.function(state);
}

int refuse_write(lua_State* state) {
  raise(state, "a " + std::string(type_name(type_at(state, 1))) +
                   " cannot be written to; a conversion changes elements with set, set_text, add and remove");
}

int destroy_amount(lua_State* state) {
  static_cast<KeptAmount*>(lua_touserdata(state, 1))->~KeptAmount();
  return 0;
}

int destroy_share(lua_State* state) {
  static_cast<ShareValue*>(lua_touserdata(state, 1))->~ShareValue();
  return 0;
}

void set_function(lua_State* state, const char* event, lua_CFunction function) {
  lua_pushcfunction(state, function);
  lua_setfield(state, -2, event);
}

void add_events(lua_State* state, Type type, bool keeps) {
  set_function(state, "__newindex", refuse_write);
  set_function(state, "__tostring", value_written);
  set_function(state, "__concat", values_joined);
  set_function(state, "__eq", values_equal);
  if (type == Type::share) set_function(state, "__gc", destroy_share);
  if (type != Type::amount) return;
  if (keeps) set_function(state, "__gc", destroy_amount);
  set_function(state, "__add", amounts_added);
  set_function(state, "__sub", amounts_subtracted);
  set_function(state, "__mul", amount_multiplied);
  set_function(state, "__div", amount_divided);
  set_function(state, "__unm", amount_negated);
  set_function(state, "__lt", amount_is_less);
  set_function(state, "__le", amount_is_at_most);
}

/// `keeps`: its values hold what must be given back.
void make_metatable(lua_State* state, Type type, const void* key, bool keeps = true) {
  lua_newtable(state);
  lua_newtable(state);
  for (const Member& member : all) {
    if (member.type != type) continue;
    push(state, member.name);
    lua_pushlightuserdata(state, const_cast<Member*>(&member));
    lua_rawset(state, -3);
  }
  lua_pushcclosure(state, type == Type::settings ? settings_read : index_value, 1);
  lua_setfield(state, -2, "__index");
  add_events(state, type, keeps);
  lua_pushboolean(state, 0);
  lua_setfield(state, -2, "__metatable");
  push(state, type_name(type));
  lua_setfield(state, -2, "__name");
  lua_rawsetp(state, LUA_REGISTRYINDEX, key);
}

template <class Value>
Value& push_value(lua_State* state, Value value) {
  void* room = lua_newuserdatauv(state, sizeof(Value), 0);
  Value* made = new (room) Value(std::move(value));
  lua_rawgetp(state, LUA_REGISTRYINDEX, key_of(made->type));
  lua_setmetatable(state, -2);
  return *made;
}

[[noreturn]] void wanted(lua_State* state, int index, std::string_view what) {
  const bool nothing = lua_type(state, index) == LUA_TNONE;
  std::string got = nothing ? "nothing" : luaL_typename(state, index);
  if (lua_isuserdata(state, index) != 0) got = type_name(type_at(state, index));
  std::string message = "wanted " + std::string(what) + ", got " + got;
  if (index == 1 && got == "tamis") message += "; calls of tamis are written with a point: tamis.amount(...)";
  else if (index == 1 && got != what) message += "; calls of values are written with a colon: fiche:steps()";
  raise(state, message);
}

}  // namespace

std::string_view type_name(Type type) { return type_names[static_cast<std::size_t>(type)]; }

std::span<const Member> members() { return all; }

void open_values(lua_State* state) {
  for (std::size_t i = 0; i < type_names.size(); ++i) make_metatable(state, static_cast<Type>(i), &keys[i]);
  make_metatable(state, Type::amount, &stated_key, false);
  push_plain(state, Type::tamis);
}

void raise(lua_State* state, const std::string& message) {
  luaL_where(state, 1);
  push(state, message);
  lua_concat(state, 2);
  lua_error(state);
  std::abort();  // lua_error does not come back
}

void no_such(lua_State* state, std::string_view what, std::string_view typed, std::span<const std::string_view> words) {
  const std::string_view near = base::nearest(typed, words);
  std::string message = std::string(what) + " \"" + std::string(typed.substr(0, 60)) + "\"";
  if (!near.empty()) message += "; the nearest is \"" + std::string(near) + "\"";
  raise(state, message);
}

// ---- pushing

void push(lua_State* state, std::string_view text) { lua_pushlstring(state, text.data(), text.size()); }

void push_fiche(lua_State* state, Opened& opened) { push_value(state, FicheValue{Type::fiche, &opened}); }

void push_element(lua_State* state, Opened& opened, fiche::Node node) {
  if (node == fiche::none)
    lua_pushnil(state);
  else
    push_value(state, NodeValue{Type::element, &opened, node});
}

void push_text(lua_State* state, Opened& opened, fiche::Node node) {
  push_value(state, NodeValue{Type::text, &opened, node});
}

void push_place(lua_State* state, const PlaceValue& place) { push_value(state, place); }

void push_amount(lua_State* state, measure::Amount amount) {
  void* room = lua_newuserdatauv(state, sizeof(KeptAmount), 0);
  auto* made = new (room) KeptAmount{{}, std::move(amount)};
  made->value.amount = &made->amount;
  lua_rawgetp(state, LUA_REGISTRYINDEX, key_of(Type::amount));
  lua_setmetatable(state, -2);
}

void push_amount_of(lua_State* state, const Opened& opened, const measure::Amount& amount) {
  if (opened.may_change()) return push_amount(state, amount);
  void* room = lua_newuserdatauv(state, sizeof(AmountValue), 0);
  new (room) AmountValue{Type::amount, &amount};
  lua_rawgetp(state, LUA_REGISTRYINDEX, &stated_key);
  lua_setmetatable(state, -2);
}

void push_mass(lua_State* state, const std::optional<flow::Grams>& grams) {
  constexpr double most = 1e12;
  if (!grams || !(grams->low >= 0 && grams->high < most)) return lua_pushnil(state);
  const measure::Unit& gram = *measure::unit_by_id("g");
  const auto exact = [](double figure) { return base::Ratio(std::llround(figure * 1000), 1000); };
  measure::Amount amount = measure::amount_of(exact(grams->low), gram);
  if (const base::Ratio high = exact(grams->high); !(high == exact(grams->low))) {
    amount.form = measure::Amount::Form::range;
    amount.high = {{high, &gram}};
  }
  push_amount(state, std::move(amount));
}

void push_share(lua_State* state, const measure::Share& share, std::string text) {
  push_value(state, ShareValue{Type::share, share, std::move(text)});
}

void push_food(lua_State* state, const food::Food* food) {
  if (food == nullptr) return lua_pushnil(state);
  push_value(state, FoodValue{Type::food, food, session_of(state).kitchen.own_food(food->id)});
}

void push_indexed(lua_State* state, Type type, Opened& opened, int index) {
  if (index < 0)
    lua_pushnil(state);
  else
    push_value(state, IndexValue{type, &opened, index, opened.reading()});
}

void push_plain(lua_State* state, Type type) { push_value(state, PlainValue{type}); }

// ---- taking

bool is(lua_State* state, int index, Type type) {
  return lua_type(state, index) == LUA_TUSERDATA && type_at(state, index) == type;
}

NodeValue& element_at(lua_State* state, int index) {
  if (!is(state, index, Type::element)) wanted(state, index, "element");
  auto& value = *static_cast<NodeValue*>(lua_touserdata(state, index));
  Session& session = value.opened->session();
  if (value.opened == session.main) session.in_hand = value.node;
  return value;
}

NodeValue& text_at(lua_State* state, int index) {
  if (!is(state, index, Type::text)) wanted(state, index, "text");
  return *static_cast<NodeValue*>(lua_touserdata(state, index));
}

Opened& fiche_at(lua_State* state, int index) {
  if (!is(state, index, Type::fiche)) wanted(state, index, "fiche");
  return *static_cast<FicheValue*>(lua_touserdata(state, index))->opened;
}

const measure::Amount& amount_at(lua_State* state, int index) {
  if (!is(state, index, Type::amount)) wanted(state, index, "amount");
  return *static_cast<const AmountValue*>(lua_touserdata(state, index))->amount;
}

FoodValue& food_at(lua_State* state, int index) {
  if (!is(state, index, Type::food)) wanted(state, index, "food");
  return *static_cast<FoodValue*>(lua_touserdata(state, index));
}

IndexValue& indexed_at(lua_State* state, int index, Type type) {
  if (!is(state, index, type)) wanted(state, index, type_name(type));
  auto& value = *static_cast<IndexValue*>(lua_touserdata(state, index));
  if (type != Type::finding && value.reading != value.opened->reading())
    raise(state, "the fiche was changed since this was asked for; ask again");
  return value;
}

PlaceValue place_at(lua_State* state, int index) {
  if (is(state, index, Type::place)) return *static_cast<PlaceValue*>(lua_touserdata(state, index));
  if (is(state, index, Type::text)) {
    const NodeValue& text = text_at(state, index);
    return {Type::place, false, true, text.opened, text.opened->document().span(text.node)};
  }
  if (!is(state, index, Type::element)) wanted(state, index, "element, text or place");
  const NodeValue& element = element_at(state, index);
  return {Type::place, false, false, element.opened, element.opened->document().head_span(element.node)};
}

std::string_view string_at(lua_State* state, int index) {
  if (lua_isstring(state, index) == 0) wanted(state, index, "string");
  std::size_t size = 0;
  const char* text = lua_tolstring(state, index, &size);
  return {text, size};
}

std::string_view string_at(lua_State* state, int index, std::string_view otherwise) {
  return lua_isnoneornil(state, index) ? otherwise : string_at(state, index);
}

measure::System system_at(lua_State* state, int index) {
  const std::string_view name = string_at(state, index);
  if (const auto system = fiche::system_named(name)) return *system;
  constexpr std::array<std::string_view, 3> systems{"metric", "us", "imperial"};
  no_such(state, "there is no system", name, systems);
}

}  // namespace tamis::lua
