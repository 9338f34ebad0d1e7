// The string functions that are written here (globals.inc): patterns whose every step is counted, results no larger
// than the plugin's memory, no addresses.
#include <lauxlib.h>
#include <lua.h>

#include <array>
#include <cstdio>
#include <cstring>
#include <string>

#include "core/lua/globals.h"
#include "core/lua/meter.h"
#include "core/lua/pattern.h"
#include "core/lua/text_buffer.h"
#include "core/lua/values.h"

namespace tamis::lua {

void TextBuffer::add(std::string_view more) {
  spend(state_, more.size() / 16);
  if (text_.size() + more.size() > meter_of(state_).limits().bytes) raise(state_, "the text grows too long");
  text_ += more;
}

namespace {

/// Offset that a position of a call means (1 the first byte, -1 the last), at most one past the end.
std::size_t offset_of(lua_Integer position, std::size_t size) {
  const auto length = static_cast<lua_Integer>(size);
  if (position < 0) position = position < -length ? 1 : length + position + 1;
  if (position < 1) position = 1;
  return static_cast<std::size_t>(position - 1);
}

void push_capture(lua_State* state, const Pattern& pattern, std::size_t number, std::size_t begin, std::size_t end) {
  if (number >= pattern.captures()) {
    if (number != 0) raise(state, "invalid capture index %" + std::to_string(number + 1));
    return push(state, pattern.subject().substr(begin, end - begin));
  }
  const Pattern::Capture& one = pattern.capture(number);
  if (one.length == Pattern::position) return lua_pushinteger(state, static_cast<lua_Integer>(one.begin) + 1);
  if (one.length > pattern.subject().size()) raise(state, "unfinished capture");
  push(state, pattern.subject().substr(one.begin, one.length));
}

/// All captures, or the whole match when there are none.
int push_captures(lua_State* state, const Pattern& pattern, std::size_t begin, std::size_t end, bool whole) {
  const std::size_t count = pattern.captures() == 0 && whole ? 1 : pattern.captures();
  luaL_checkstack(state, static_cast<int>(count), "too many captures");
  for (std::size_t i = 0; i < count; ++i) push_capture(state, pattern, i, begin, end);
  return static_cast<int>(count);
}

int push_found(lua_State* state, std::size_t at, std::size_t length) {
  lua_pushinteger(state, static_cast<lua_Integer>(at) + 1);
  lua_pushinteger(state, static_cast<lua_Integer>(at + length));
  return 2;
}

int find_plain(lua_State* state, std::string_view subject, std::string_view wanted, std::size_t from) {
  spend(state, (subject.size() - from) / 16 * (wanted.size() / 16 + 1));
  const void* found = ::memmem(subject.data() + from, subject.size() - from, wanted.data(), wanted.size());
  if (found != nullptr)
    return push_found(state, static_cast<std::size_t>(static_cast<const char*>(found) - subject.data()), wanted.size());
  lua_pushnil(state);
  return 1;
}

int find(lua_State* state, bool places) {
  const std::string_view subject = string_at(state, 1);
  std::string_view wanted = string_at(state, 2);
  const std::size_t from = offset_of(luaL_optinteger(state, 3, 1), subject.size());
  if (from > subject.size()) {
    lua_pushnil(state);
    return 1;
  }
  const bool plain = lua_toboolean(state, 4) != 0 || wanted.find_first_of("^$*+?.([%-") == std::string_view::npos;
  if (places && plain) return find_plain(state, subject, wanted, from);
  const bool anchored = wanted.starts_with('^');
  if (anchored) wanted.remove_prefix(1);
  Pattern pattern(state, subject, wanted);
  for (std::size_t at = from; at <= subject.size(); ++at) {
    spend(state, 1);
    const std::size_t end = pattern.match(at);
    if (end != Pattern::npos) {
      if (!places) return push_captures(state, pattern, at, end, true);
      return push_found(state, at, end - at) + push_captures(state, pattern, at, end, false);
    }
    if (anchored) break;
  }
  lua_pushnil(state);
  return 1;
}

/// Upvalues: subject, pattern, where to go on, where the last match ended (-1: none yet).
int next_match(lua_State* state) {
  const std::string_view subject = string_at(state, lua_upvalueindex(1));
  const lua_Integer last = lua_tointeger(state, lua_upvalueindex(4));
  Pattern pattern(state, subject, string_at(state, lua_upvalueindex(2)));
  for (auto at = static_cast<std::size_t>(lua_tointeger(state, lua_upvalueindex(3))); at <= subject.size(); ++at) {
    spend(state, 1);
    const std::size_t end = pattern.match(at);
    if (end == Pattern::npos || static_cast<lua_Integer>(end) == last) continue;
    for (const int upvalue : {3, 4}) {
      lua_pushinteger(state, static_cast<lua_Integer>(end));
      lua_replace(state, lua_upvalueindex(upvalue));
    }
    return push_captures(state, pattern, at, end, true);
  }
  return 0;
}

/// What "%1" and the like in a replacement stand for.
void add_words(lua_State* state, TextBuffer& out, const Pattern& pattern, std::size_t begin, std::size_t end) {
  const std::string_view words = string_at(state, 3);
  for (std::size_t at = 0; at < words.size(); ++at) {
    if (words[at] != '%') {
      out.add(words.substr(at, 1));
      continue;
    }
    const char sign = ++at < words.size() ? words[at] : '\0';
    if (sign == '%') {
      out.add("%");
    } else if (sign == '0') {
      out.add(pattern.subject().substr(begin, end - begin));
    } else if (sign >= '1' && sign <= '9') {
      push_capture(state, pattern, static_cast<std::size_t>(sign - '1'), begin, end);
      out.add(push_written(state, -1));
      lua_pop(state, 2);
    } else {
      raise(state, "invalid use of '%' in replacement string");
    }
  }
}

/// What the table or function at 3 puts in place of a match; false, nil leave it.
void add_answer(lua_State* state, TextBuffer& out, const Pattern& pattern, std::size_t begin, std::size_t end) {
  if (lua_type(state, 3) == LUA_TFUNCTION) {
    lua_pushvalue(state, 3);
    const int count = push_captures(state, pattern, begin, end, true);
    lua_call(state, count, 1);
  } else {
    push_capture(state, pattern, 0, begin, end);
    lua_gettable(state, 3);
  }
  if (lua_toboolean(state, -1) == 0)
    out.add(pattern.subject().substr(begin, end - begin));
  else if (lua_isstring(state, -1) != 0)
    out.add(string_at(state, -1));
  else
    raise(state, "invalid replacement value (a " + std::string(luaL_typename(state, -1)) + ")");
  lua_pop(state, 1);
}

// ---- format

struct Spec {
  std::string text;  ///< "%-5.2" without the letter
  char letter = 0;
  int width = 0;
  int precision = -1;
  bool left = false;
};

Spec read_spec(lua_State* state, std::string_view format, std::size_t& at) {
  Spec spec;
  spec.text = "%";
  const auto here = [&] { return at < format.size() ? format[at] : '\0'; };
  const auto digits = [&](int& into) {
    into = 0;
    for (int count = 0; here() >= '0' && here() <= '9'; ++count, ++at) {
      if (count == 2) raise(state, "a width in string.format has more than two digits");
      into = into * 10 + (here() - '0');
      spec.text += here();
    }
  };
  for (int flags = 0; here() != '\0' && std::string_view("-+ #0").find(here()) != std::string_view::npos; ++at) {
    if (++flags > 5) raise(state, "too many flags in string.format");
    spec.left = spec.left || here() == '-';
    spec.text += here();
  }
  digits(spec.width);
  if (here() == '.') {
    spec.text += here();
    ++at;
    digits(spec.precision);
  }
  spec.letter = here();
  ++at;
  return spec;
}

void add_string(lua_State* state, TextBuffer& out, const Spec& spec, int index) {
  std::string_view words = push_written(state, index);
  if (spec.precision >= 0) words = words.substr(0, static_cast<std::size_t>(spec.precision));
  const auto width = static_cast<std::size_t>(spec.width);
  const std::string pad(width > words.size() ? width - words.size() : 0, ' ');
  if (!spec.left) out.add(pad);
  out.add(words);
  if (spec.left) out.add(pad);
  lua_pop(state, 1);
}

void add_quoted(lua_State* state, TextBuffer& out, int index) {
  if (lua_type(state, index) != LUA_TSTRING) return add_string(state, out, {}, index);
  out.add("\"");
  for (const char c : string_at(state, index)) {
    if (c == '"' || c == '\\' || c == '\n')
      out.add(std::string("\\") + c);
    else if (c == '\r')
      out.add("\\r");
    else if (c == '\0')
      out.add("\\0");
    else
      out.add(std::string(1, c));
  }
  out.add("\"");
}

template <class Number>
void add_number(TextBuffer& out, const Spec& spec, const char* length, Number number) {
  std::array<char, 512> made{};  // the longest: %99.99f of 1e308
  const std::string form = spec.text + length + spec.letter;
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"  // the form is one that read_spec has taken apart
  const int size = std::snprintf(made.data(), made.size(), form.c_str(), number);
#pragma GCC diagnostic pop
  out.add(std::string_view(made.data(), static_cast<std::size_t>(size)));
}

void add_formatted(lua_State* state, TextBuffer& out, const Spec& spec, int index) {
  luaL_checkany(state, index);
  switch (spec.letter) {
    case 's': return add_string(state, out, spec, index);
    case 'q': return add_quoted(state, out, index);
    case 'c': return out.add(std::string(1, static_cast<char>(luaL_checkinteger(state, index))));
    case 'd': case 'i': case 'o': case 'u': case 'x': case 'X':
      return add_number(out, spec, "ll", static_cast<long long>(luaL_checkinteger(state, index)));
    case 'a': case 'A': case 'e': case 'E': case 'f': case 'F': case 'g': case 'G':
      return add_number(out, spec, "", luaL_checknumber(state, index));
    default:
      raise(state, "string.format does not know %" + std::string(1, spec.letter == '\0' ? ' ' : spec.letter));
  }
}

}  // namespace

int own_string_find(lua_State* state) { return find(state, true); }
int own_string_match(lua_State* state) { return find(state, false); }

int own_string_gmatch(lua_State* state) {
  (void)string_at(state, 1);
  (void)string_at(state, 2);
  lua_settop(state, 2);
  lua_pushinteger(state, 0);
  lua_pushinteger(state, -1);
  lua_pushcclosure(state, next_match, 4);
  return 1;
}

int own_string_gsub(lua_State* state) {
  const std::string_view subject = string_at(state, 1);
  std::string_view wanted = string_at(state, 2);
  const int kind = lua_type(state, 3);
  if (kind != LUA_TSTRING && kind != LUA_TNUMBER && kind != LUA_TTABLE && kind != LUA_TFUNCTION)
    luaL_typeerror(state, 3, "string, table or function");
  const lua_Integer most = luaL_optinteger(state, 4, LUA_MAXINTEGER);
  const bool anchored = wanted.starts_with('^');
  if (anchored) wanted.remove_prefix(1);
  Pattern pattern(state, subject, wanted);
  TextBuffer out(state);
  lua_Integer count = 0;
  std::size_t at = 0;
  std::size_t last = Pattern::npos;
  while (count < most) {
    spend(state, 1);
    const std::size_t end = pattern.match(at);
    if (end != Pattern::npos && end != last) {
      ++count;
      if (kind == LUA_TTABLE || kind == LUA_TFUNCTION)
        add_answer(state, out, pattern, at, end);
      else
        add_words(state, out, pattern, at, end);
      at = last = end;
    } else if (at < subject.size()) {
      out.add(subject.substr(at++, 1));
    } else {
      break;
    }
    if (anchored) break;
  }
  out.add(subject.substr(std::min(at, subject.size())));
  push(state, out.text());
  lua_pushinteger(state, count);
  return 2;
}

int own_string_rep(lua_State* state) {
  const std::string_view words = string_at(state, 1);
  const lua_Integer times = luaL_checkinteger(state, 2);
  const std::string_view between = string_at(state, 3, "");
  const std::size_t most = meter_of(state).limits().bytes;
  if (times <= 0 || words.size() + between.size() == 0) {
    push(state, "");
    return 1;
  }
  if (static_cast<std::size_t>(times) > most / (words.size() + between.size()))
    raise(state, "string.rep: the text grows too long");
  TextBuffer out(state);
  for (lua_Integer i = 0; i < times; ++i) {
    out.add(words);
    if (i + 1 < times) out.add(between);
    if (i % 64 == 0) spend(state, 4);
  }
  push(state, out.text());
  return 1;
}

int own_string_byte(lua_State* state) {
  constexpr std::size_t most = 100000;
  const std::string_view words = string_at(state, 1);
  const lua_Integer first = luaL_optinteger(state, 2, 1);
  const std::size_t begin = offset_of(first, words.size());
  const lua_Integer last = luaL_optinteger(state, 3, static_cast<lua_Integer>(begin) + 1);
  if (last == 0 || last < -static_cast<lua_Integer>(words.size())) return 0;
  const std::size_t end = std::min(offset_of(last, words.size()) + 1, words.size());
  if (begin >= end) return 0;
  if (end - begin > most || lua_checkstack(state, static_cast<int>(end - begin)) == 0)
    raise(state, "string.byte: too many results");
  spend(state, end - begin);
  for (std::size_t at = begin; at < end; ++at)
    lua_pushinteger(state, static_cast<unsigned char>(words[at]));
  return static_cast<int>(end - begin);
}

int own_string_format(lua_State* state) {
  const std::string_view format = string_at(state, 1);
  TextBuffer out(state);
  int argument = 1;
  for (std::size_t at = 0; at < format.size();) {
    if (format[at] != '%') {
      const std::size_t end = std::min(format.find('%', at), format.size());
      out.add(format.substr(at, end - at));
      at = end;
    } else if (format.substr(at).starts_with("%%")) {
      out.add("%");
      at += 2;
    } else {
      const Spec spec = read_spec(state, format, ++at);
      add_formatted(state, out, spec, ++argument);
    }
  }
  push(state, out.text());
  return 1;
}

}  // namespace tamis::lua
