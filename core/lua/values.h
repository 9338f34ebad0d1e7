#ifndef CORE_LUA_VALUES_H
#define CORE_LUA_VALUES_H

#include <cstddef>
#include <span>
#include <string>
#include <string_view>

#include "core/base/source.h"
#include "core/fiche/document.h"
#include "core/fiche/kitchen.h"
#include "core/food/food.h"
#include "core/lua/session.h"
#include "core/measure/amount.h"
#include "core/measure/unit.h"

struct lua_State;

namespace tamis::lua {

/// The kinds of value a plugin holds, in the order of api.inc. Each is a userdata that starts with its kind; nothing
/// else in a state is a userdata, so that byte may be trusted.
enum class Type : unsigned char {
  tamis, settings, fiche, element, text, place, finding, amount, share, food, kitchen, thing, taking
};
std::string_view type_name(Type type);

struct FicheValue {
  Type type = Type::fiche;
  Opened* opened = nullptr;
};
struct NodeValue {  ///< an element or a text
  Type type = Type::element;
  Opened* opened = nullptr;
  fiche::Node node = fiche::none;
};
struct PlaceValue {
  Type type = Type::place;
  bool in_attribute = false;
  bool value = false;  ///< it is a text or the value of an attribute, and may be mended
  const Opened* opened = nullptr;
  base::Span where;
};
struct IndexValue {  ///< a finding of the session; a thing or taking of a flow
  Type type = Type::finding;
  Opened* opened = nullptr;
  int index = -1;
  unsigned reading = 0;  ///< Opened::reading it is of
};
struct AmountValue {
  Type type = Type::amount;
  const measure::Amount* amount = nullptr;  ///< of what a fiche states, or behind it in a KeptAmount
};
struct KeptAmount {
  AmountValue value;
  measure::Amount amount;
};
struct ShareValue {
  Type type = Type::share;
  measure::Share share;
  std::string text;
};
struct FoodValue {
  Type type = Type::food;
  const food::Food* food = nullptr;
  const fiche::Kitchen::OwnFood* own = nullptr;
};
struct PlainValue {  ///< tamis, settings, kitchen: there is one of each
  Type type = Type::tamis;
};

/// One line of api.inc with the function behind it: the value stands at index 1.
struct Member {
  Type type;
  std::string_view name;
  std::string_view kinds;  ///< elements that have it; "" for all
  std::string_view words;
  std::string_view doc;
  bool call = false;
  int (*function)(lua_State*) = nullptr;
};
std::span<const Member> members();

/// Makes the metatables of all types, and leaves the value `tamis` on the stack.
void open_values(lua_State* state);

// ---- pushing. A null or missing thing pushes nil.
void push(lua_State* state, std::string_view text);
void push_fiche(lua_State* state, Opened& opened);
void push_element(lua_State* state, Opened& opened, fiche::Node node);
void push_text(lua_State* state, Opened& opened, fiche::Node node);
void push_place(lua_State* state, const PlaceValue& place);
void push_amount(lua_State* state, measure::Amount amount);
/// The amount of a statement, uncopied where the fiche does not change under it.
void push_amount_of(lua_State* state, const Opened& opened, const measure::Amount& amount);
void push_mass(lua_State* state, const std::optional<flow::Grams>& grams);
void push_share(lua_State* state, const measure::Share& share, std::string text);
void push_food(lua_State* state, const food::Food* food);
void push_indexed(lua_State* state, Type type, Opened& opened, int index);
void push_plain(lua_State* state, Type type);

// ---- taking arguments; each raises a Lua error that names what was wanted
NodeValue& element_at(lua_State* state, int index);
NodeValue& text_at(lua_State* state, int index);
Opened& fiche_at(lua_State* state, int index);
const measure::Amount& amount_at(lua_State* state, int index);
PlaceValue place_at(lua_State* state, int index);  ///< of an element, text or place
IndexValue& indexed_at(lua_State* state, int index, Type type);
FoodValue& food_at(lua_State* state, int index);
bool is(lua_State* state, int index, Type type);
/// The unit an amount's first figure is written in; null for words.
const measure::Unit* first_unit(const measure::Amount& amount);
std::string_view string_at(lua_State* state, int index);
std::string_view string_at(lua_State* state, int index, std::string_view otherwise);  ///< when left out or nil
measure::System system_at(lua_State* state, int index);
/// Raises for what may not go into a document: it is no valid UTF-8, or holds control characters.
void check_words(lua_State* state, std::string_view words);
/// A text that goes into a document, counted.
std::string_view new_words_at(lua_State* state, int index);

/// Raises an error: `what` is not one of these words; gives the nearest.
[[noreturn]] void no_such(lua_State* state, std::string_view what, std::string_view typed,
                          std::span<const std::string_view> words);
[[noreturn]] void raise(lua_State* state, const std::string& message);

}  // namespace tamis::lua

#endif
