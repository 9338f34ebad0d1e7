// Foods and the kitchen (api.inc).
#include <lua.h>

#include <array>
#include <cmath>
#include <vector>

#include "core/lua/lists.h"
#include "core/lua/members.h"
#include "core/lua/values.h"
#include "core/lua/walk.h"
#include "core/measure/read.h"
#include "core/measure/trade_word.h"

namespace tamis::lua {
namespace {

const food::Food& food_of(lua_State* state) { return *food_at(state, 1).food; }

int push_number_or_nil(lua_State* state, double figure) {
  if (std::isnan(figure))
    lua_pushnil(state);
  else
    lua_pushnumber(state, figure);
  return 1;
}

int push_allergens(lua_State* state, food::Allergens bits) {
  std::vector<std::string_view> ids;
  for (const food::AllergenName& name : food::allergen_names())
    if ((bits & name.bit) != 0) ids.push_back(name.id);
  return push_list(state, ids, [state](std::string_view id) { push(state, id); });
}

struct Part {
  std::string_view name;
  double food::Composition::*figure;
};
constexpr std::array<Part, 11> parts{{{"water", &food::Composition::water},
                                      {"energy", &food::Composition::energy_kcal},
                                      {"protein", &food::Composition::protein},
                                      {"fat", &food::Composition::fat},
                                      {"saturated", &food::Composition::saturated},
                                      {"carbohydrate", &food::Composition::carbohydrate},
                                      {"sugars", &food::Composition::sugars},
                                      {"fibre", &food::Composition::fibre},
                                      {"ash", &food::Composition::ash},
                                      {"sodium", &food::Composition::sodium_mg},
                                      {"alcohol", &food::Composition::alcohol}}};

}  // namespace

int food_id(lua_State* state) {
  push(state, food_of(state).id);
  return 1;
}

int food_role(lua_State* state) {
  push(state, food::role_name(food_of(state).role));
  return 1;
}

int food_own(lua_State* state) {
  lua_pushboolean(state, food_at(state, 1).own != nullptr ? 1 : 0);
  return 1;
}

int food_trim(lua_State* state) { return push_number_or_nil(state, food_of(state).trim_share); }

int food_name(lua_State* state) {
  const FoodValue& value = food_at(state, 1);
  Session& session = session_of(state);
  const std::string_view language = string_at(
      state, 2, session.main == nullptr ? session.kitchen.reading.language : session.main->fiche().reading.language);
  const bool french = language.starts_with("fr") && !value.food->french.empty();
  std::string_view name = french ? value.food->french : value.food->english;
  if (value.own != nullptr && !value.own->name.empty()) name = value.own->name;
  push(state, name.substr(0, name.find('|')));
  return 1;
}

int food_allergens(lua_State* state) {
  const FoodValue& value = food_at(state, 1);
  const bool stated = value.own != nullptr && !value.own->specified.empty();
  return push_allergens(state, stated ? value.own->contains : value.food->allergens);
}

int food_may_contain(lua_State* state) {
  const FoodValue& value = food_at(state, 1);
  return push_allergens(state, value.own == nullptr ? 0 : value.own->may_contain);
}

int food_density(lua_State* state) {
  const auto density = food::density_of(food_of(state), string_at(state, 2, ""));
  return push_number_or_nil(state, density ? density->grams_per_ml.approximate() : NAN);
}

int food_piece(lua_State* state) {
  const auto piece = food::piece_of(food_of(state), string_at(state, 2, ""));
  return push_number_or_nil(state, piece ? piece->grams.approximate() : NAN);
}

int food_per_100_g(lua_State* state) {
  const food::Food& food = food_of(state);
  const std::string_view what = string_at(state, 2);
  std::vector<std::string_view> names;
  for (const Part& part : parts) {
    if (part.name == what) return push_number_or_nil(state, food.per_100_g.*part.figure);
    names.push_back(part.name);
  }
  no_such(state, "the table has no figure for", what, names);
}

int kitchen_name(lua_State* state) {
  push(state, session_of(state).kitchen.name);
  return 1;
}

int kitchen_language(lua_State* state) {
  push(state, session_of(state).kitchen.reading.language);
  return 1;
}

int kitchen_system(lua_State* state) {
  const auto system = session_of(state).kitchen.system;
  if (!system) lua_pushnil(state);
  else push(state, *system == measure::System::us ? "us" : *system == measure::System::imperial ? "imperial" : "metric");
  return 1;
}

int kitchen_altitude(lua_State* state) {
  const auto& altitude = session_of(state).kitchen.altitude_m;
  if (altitude)
    push_amount(state, measure::amount_of(*altitude, *measure::unit_by_id("m")));
  else
    lua_pushnil(state);
  return 1;
}

int kitchen_root(lua_State* state) {
  Opened* file = session_of(state).kitchen_file();
  if (file == nullptr)
    lua_pushnil(state);
  else
    push_element(state, *file, file->document().root());
  return 1;
}

int kitchen_all(lua_State* state) {
  Opened* file = session_of(state).kitchen_file();
  const WantedKinds wanted(state, 2);
  if (file != nullptr)
    return push_elements(state, *file, elements_below(state, file->document(), file->document().top(), wanted));
  ListMaker none(state);
  return 1;
}

int kitchen_meaning(lua_State* state) {
  const fiche::Kitchen& kitchen = session_of(state).kitchen;
  const std::string_view word = string_at(state, 2);
  const measure::TradeWord* known = measure::read_trade_word(word, kitchen.reading.language);
  const auto found = kitchen.meanings.find(known == nullptr ? word : known->id);
  if (found == kitchen.meanings.end())
    lua_pushnil(state);
  else
    push_amount(state, found->second);
  return 1;
}

}  // namespace tamis::lua
