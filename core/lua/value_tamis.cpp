// tamis and its settings (api.inc).
#include <lauxlib.h>
#include <lua.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/base/nearest.h"
#include "core/base/utf8.h"
#include "core/lua/letters.h"
#include "core/lua/lists.h"
#include "core/lua/members.h"
#include "core/lua/meter.h"
#include "core/lua/values.h"
#include "core/measure/read.h"
#include "core/measure/write.h"

namespace tamis::lua {
namespace {

/// A string argument, paid for.
std::string_view words_at(lua_State* state, int index) {
  const std::string_view words = string_at(state, index);
  spend(state, words.size() / 8);
  return words;
}

struct PushSetting {
  lua_State* state;
  void operator()(const std::string& text) const { push(state, text); }
  void operator()(double number) const {
    if (number == std::floor(number) && std::abs(number) < 1e15)
      lua_pushinteger(state, static_cast<lua_Integer>(number));
    else
      lua_pushnumber(state, number);
  }
  void operator()(bool yes) const { lua_pushboolean(state, yes ? 1 : 0); }
  void operator()(const std::vector<std::string>& list) const {
    push_list(state, list, [this](const std::string& item) { push(state, item); });
  }
};

std::string language_at(lua_State* state, int index) {
  Session& session = session_of(state);
  std::string fallback = session.main == nullptr ? session.kitchen.reading.language
                                                 : session.main->fiche().reading.language;
  return std::string(string_at(state, index, fallback));
}

measure::Reading reading_at(lua_State* state, int system, int language) {
  Session& session = session_of(state);
  measure::Reading reading = session.main == nullptr ? session.kitchen.reading : session.main->fiche().reading;
  if (!lua_isnoneornil(state, language)) {
    reading.language = string_at(state, language);
    reading.decimal = 0;
  }
  if (!lua_isnoneornil(state, system)) reading.system = system_at(state, system);
  return reading;
}

std::vector<std::string_view> words_of(std::string_view text) {
  std::vector<std::string_view> words;
  std::size_t at = 0;
  for (std::string_view word = next_word(text, at); !word.empty(); word = next_word(text, at)) words.push_back(word);
  return words;
}

}  // namespace

int settings_read(lua_State* state) {
  std::string name(string_at(state, 2));
  std::replace(name.begin(), name.end(), '_', '-');
  const Session& session = session_of(state);
  if (const auto found = session.settings.find(name); found != session.settings.end()) {
    std::visit(PushSetting{state}, found->second);
    return 1;
  }
  std::vector<std::string_view> names;
  for (const Taking& taking : *session.takes) {
    if (taking.name == name) {
      lua_pushnil(state);
      return 1;
    }
    names.push_back(taking.name);
  }
  no_such(state, "the manifest takes no setting", name, names);
}

int tamis_api(lua_State* state) {
  lua_pushinteger(state, api_version);
  return 1;
}

int tamis_settings(lua_State* state) {
  push_plain(state, Type::settings);
  return 1;
}

int tamis_kitchen(lua_State* state) {
  push_plain(state, Type::kitchen);
  return 1;
}

int tamis_amount(lua_State* state) {
  constexpr measure::Kinds kinds = measure::amount_kinds | measure::temperature_kinds | measure::time_kinds;
  const std::string_view words = words_at(state, 1);
  const auto read = measure::read_amount(words, kinds, reading_at(state, 2, 3));
  if (read) {
    push_amount(state, *read);
    return 1;
  }
  lua_pushnil(state);
  push(state, read.fault().message);
  return 2;
}

int tamis_food(lua_State* state) {
  push_food(state, session_of(state).kitchen.find_food(string_at(state, 1)));
  return 1;
}

int tamis_allergen(lua_State* state) {
  const std::string_view id = string_at(state, 1);
  const bool french = language_at(state, 2).starts_with("fr");
  std::vector<std::string_view> ids;
  for (const food::AllergenName& name : food::allergen_names()) {
    ids.push_back(name.id);
    if (name.id != id) continue;
    push(state, french ? name.french : name.english);
    return 1;
  }
  no_such(state, "there is no allergen", id, ids);
}

int tamis_number(lua_State* state) {
  const double figure = luaL_checknumber(state, 1);
  constexpr double most = 1e12;
  if (!(std::abs(figure) < most)) raise(state, "the number is too large to write");
  measure::Writing writing;
  writing.language = language_at(state, 2);
  writing.fractions = false;
  const base::Ratio exact = lua_isinteger(state, 1) != 0 ? base::Ratio(lua_tointeger(state, 1))
                                                         : base::Ratio(std::llround(figure * 1e6), 1000000);
  push(state, measure::write_number(exact, writing));
  return 1;
}

int tamis_lower(lua_State* state) {
  push(state, base::lower(words_at(state, 1)));
  return 1;
}

int tamis_upper(lua_State* state) {
  push(state, upper(words_at(state, 1)));
  return 1;
}

int tamis_trim(lua_State* state) {
  push(state, base::trimmed(words_at(state, 1)));
  return 1;
}

int tamis_length(lua_State* state) {
  lua_pushinteger(state, static_cast<lua_Integer>(base::count_scalars(words_at(state, 1))));
  return 1;
}

int tamis_words(lua_State* state) {
  return push_list(state, words_of(words_at(state, 1)), [state](std::string_view word) { push(state, word); });
}

int tamis_count_words(lua_State* state) {
  WordCounter words;
  words.add(words_at(state, 1));
  lua_pushinteger(state, static_cast<lua_Integer>(words.count()));
  return 1;
}

int tamis_nearest(lua_State* state) {
  const std::string_view word = words_at(state, 1);
  luaL_checktype(state, 2, LUA_TTABLE);
  std::vector<std::string> list;
  const auto size = static_cast<lua_Integer>(lua_rawlen(state, 2));
  for (lua_Integer i = 1; i <= size; ++i) {
    lua_rawgeti(state, 2, i);
    const std::string_view item = string_at(state, -1);
    spend(state, 1 + (word.size() + 1) * (std::min<std::size_t>(item.size(), 256) + 1) / 16);
    list.emplace_back(item);
    lua_pop(state, 1);
  }
  const std::vector<std::string_view> views(list.begin(), list.end());
  const std::string_view near = base::nearest(word, views);
  if (near.empty())
    lua_pushnil(state);
  else
    push(state, near);
  return 1;
}

int tamis_type(lua_State* state) {
  luaL_checkany(state, 1);
  if (lua_isuserdata(state, 1) != 0)
    push(state, type_name(*static_cast<const Type*>(lua_touserdata(state, 1))));
  else
    push(state, luaL_typename(state, 1));
  return 1;
}

int tamis_folded(lua_State* state) {
  const std::string_view text = words_at(state, 1);
  const auto columns = static_cast<std::size_t>(std::clamp<lua_Integer>(luaL_checkinteger(state, 2), 1, 1000));
  const std::string_view indent = string_at(state, 3, "");
  const std::size_t set_in = base::count_scalars(indent);
  std::string out;
  std::size_t taken = 0;  // letters of the line at hand, its indent too
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t begin = text.find_first_not_of(" \n", at);
    if (begin == std::string_view::npos) break;
    at = std::min(text.find_first_of(" \n", begin), text.size());
    const std::string_view word = text.substr(begin, at - begin);
    const std::size_t letters = base::count_scalars(word);
    const bool goes_on = taken > 0 && taken + 1 + letters <= columns;
    if (!goes_on) spend(state, 1 + indent.size() / 8);
    out.append(goes_on ? " " : out.empty() ? "" : "\n").append(goes_on ? "" : indent).append(word);
    taken = goes_on ? taken + 1 + letters : set_in + letters;
  }
  push(state, out);
  return 1;
}

int tamis_escape(lua_State* state) {
  std::string out;
  const std::string_view words = words_at(state, 1);
  out.reserve(words.size());
  for (const char c : words) {
    switch (c) {
      case '&': out += "&amp;"; break;
      case '<': out += "&lt;"; break;
      case '>': out += "&gt;"; break;
      case '"': out += "&quot;"; break;
      case '\'': out += "&#39;"; break;
      default: out += c;
    }
  }
  push(state, out);
  return 1;
}

}  // namespace tamis::lua
