// Runs of text and places in the source (api.inc).
#include <lauxlib.h>
#include <lua.h>

#include <algorithm>

#include "core/lua/members.h"
#include "core/lua/values.h"

namespace tamis::lua {
namespace {

std::string_view words_of(const NodeValue& value) { return value.opened->document().value(value.node); }

struct Range {
  std::size_t begin = 0;
  std::size_t end = 0;
};

/// Bytes first to last as string.sub counts them, the ends drawn to whole signs of UTF-8.
Range range_at(lua_State* state, std::string_view words) {
  const auto size = static_cast<lua_Integer>(words.size());
  lua_Integer first = luaL_checkinteger(state, 2);
  lua_Integer last = luaL_checkinteger(state, 3);
  if (first < 0) first = std::max<lua_Integer>(size + first + 1, 1);
  if (last < 0) last = size + last + 1;
  if (first < 1 || first > size + 1 || last > size || last < first - 1)
    raise(state, "bytes " + std::to_string(first) + " to " + std::to_string(last) + " are not in a text of " +
                     std::to_string(size));
  Range range{static_cast<std::size_t>(first - 1), static_cast<std::size_t>(last)};
  const auto inside = [&words](std::size_t at) {
    return at < words.size() && (static_cast<unsigned char>(words[at]) & 0xC0U) == 0x80U;
  };
  while (range.begin > 0 && inside(range.begin)) --range.begin;
  while (inside(range.end)) ++range.end;
  return range;
}

const PlaceValue& place_of(lua_State* state) {
  if (!is(state, 1, Type::place)) raise(state, "wanted place");
  return *static_cast<PlaceValue*>(lua_touserdata(state, 1));
}

}  // namespace

int text_kind(lua_State* state) {
  text_at(state, 1);
  push(state, "text");
  return 1;
}

int text_text(lua_State* state) {
  push(state, words_of(text_at(state, 1)));
  return 1;
}

int text_parent(lua_State* state) {
  const NodeValue& value = text_at(state, 1);
  push_element(state, *value.opened, value.opened->document().parent(value.node));
  return 1;
}

int text_place(lua_State* state) {
  push_place(state, place_at(state, 1));
  return 1;
}

int text_place_of(lua_State* state) {
  const NodeValue& value = text_at(state, 1);
  const Range range = range_at(state, words_of(value));
  push_place(state, {Type::place, false, true, value.opened,
                     value.opened->document().text_span(value.node, range.begin, range.end)});
  return 1;
}

int place_line(lua_State* state) {
  const PlaceValue& place = place_of(state);
  lua_pushinteger(state, place.opened->document().source().place(place.where.begin).line);
  return 1;
}

int place_column(lua_State* state) {
  const PlaceValue& place = place_of(state);
  lua_pushinteger(state, place.opened->document().source().place(place.where.begin).column);
  return 1;
}

int place_text(lua_State* state) {
  const PlaceValue& place = place_of(state);
  push(state, place.opened->document().source().slice(place.where));
  return 1;
}

// ---- conversions

int text_replace(lua_State* state) {
  const NodeValue& value = text_at(state, 1);
  if (!value.opened->may_change()) raise(state, "only a conversion may change the fiche it was given");
  const std::string_view words = words_of(value);
  const Range range = range_at(state, words);
  std::string made(words.substr(0, range.begin));
  made += new_words_at(state, 4);
  made += words.substr(range.end);
  value.opened->edit().set_value(value.node, made);
  return 0;
}

}  // namespace tamis::lua
