// What ==, .. and tostring do with the values of api.inc; arithmetic of amounts is in value_amount.cpp.
#include <lua.h>

#include <string>

#include "core/lua/globals.h"
#include "core/lua/members.h"
#include "core/lua/values.h"
#include "core/measure/write.h"

namespace tamis::lua {
namespace {

Type type_at(lua_State* state, int index) { return *static_cast<const Type*>(lua_touserdata(state, index)); }

bool same_amount(const measure::Amount& a, const measure::Amount& b) {
  if (a.kind != b.kind || a.form != b.form) return false;
  if (!a.has_figure()) return a.words == b.words;
  return a.low_base() == b.low_base() && a.high_base() == b.high_base();
}

bool same_share(const ShareValue& a, const ShareValue& b) { return a.share == b.share; }

template <class Value>
Value& value_at(lua_State* state, int index) {
  return *static_cast<Value*>(lua_touserdata(state, index));
}

std::string written(lua_State* state, int index) {
  switch (type_at(state, index)) {
    case Type::element: {
      const auto& value = value_at<NodeValue>(state, index);
      return "<" + std::string(value.opened->document().name(value.node)) + ">";
    }
    case Type::text: {
      const auto& value = value_at<NodeValue>(state, index);
      return std::string(value.opened->document().value(value.node));
    }
    case Type::place: {
      const auto& value = value_at<PlaceValue>(state, index);
      const base::Place place = value.opened->document().source().place(value.where.begin);
      return "line " + std::to_string(place.line) + ", column " + std::to_string(place.column);
    }
    case Type::share: return value_at<ShareValue>(state, index).text;
    case Type::food: return std::string(value_at<FoodValue>(state, index).food->id);
    default: return std::string(type_name(type_at(state, index)));
  }
}

}  // namespace

int value_written(lua_State* state) {
  if (is(state, 1, Type::amount)) {
    lua_settop(state, 1);
    return amount_written(state);
  }
  push(state, written(state, 1));
  return 1;
}

int values_joined(lua_State* state) {
  std::string out(push_written(state, 1));
  out += push_written(state, 2);
  push(state, out);
  return 1;
}

int values_equal(lua_State* state) {
  bool equal = false;
  if (lua_isuserdata(state, 1) != 0 && lua_isuserdata(state, 2) != 0 && type_at(state, 1) == type_at(state, 2)) {
    switch (type_at(state, 1)) {
      case Type::fiche: equal = value_at<FicheValue>(state, 1).opened == value_at<FicheValue>(state, 2).opened; break;
      case Type::element:
      case Type::text:
        equal = value_at<NodeValue>(state, 1).opened == value_at<NodeValue>(state, 2).opened &&
                value_at<NodeValue>(state, 1).node == value_at<NodeValue>(state, 2).node;
        break;
      case Type::place:
        equal = value_at<PlaceValue>(state, 1).opened == value_at<PlaceValue>(state, 2).opened &&
                value_at<PlaceValue>(state, 1).where == value_at<PlaceValue>(state, 2).where;
        break;
      case Type::amount: equal = same_amount(*value_at<AmountValue>(state, 1).amount, *value_at<AmountValue>(state, 2).amount); break;
      case Type::share: equal = same_share(value_at<ShareValue>(state, 1), value_at<ShareValue>(state, 2)); break;
      case Type::food: equal = value_at<FoodValue>(state, 1).food == value_at<FoodValue>(state, 2).food; break;
      case Type::finding:
      case Type::thing:
      case Type::taking:
        equal = value_at<IndexValue>(state, 1).opened == value_at<IndexValue>(state, 2).opened &&
                value_at<IndexValue>(state, 1).index == value_at<IndexValue>(state, 2).index;
        break;
      default: equal = true;  // there is one of each
    }
  }
  lua_pushboolean(state, equal ? 1 : 0);
  return 1;
}

}  // namespace tamis::lua
