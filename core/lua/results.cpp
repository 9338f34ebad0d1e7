#include "core/lua/results.h"

#include <lauxlib.h>
#include <lua.h>

#include <algorithm>

#include "core/base/utf8.h"
#include "core/lua/meter.h"
#include "core/lua/values.h"

namespace tamis::lua {
namespace {

/// Names of devices where Windows has its say, whatever ending follows.
bool is_reserved(std::string_view name) {
  constexpr std::string_view devices[] = {"con", "prn", "aux", "nul"};
  const std::string stem = base::lower(name.substr(0, name.find('.')));
  if (std::find(std::begin(devices), std::end(devices), stem) != std::end(devices)) return true;
  return stem.size() == 4 && (stem.starts_with("com") || stem.starts_with("lpt")) && stem[3] >= '0' && stem[3] <= '9';
}

/// A file beside others, on any system: letters of any language, digits, spaces and . _ - ( ), no dot in front, nothing
/// that is not seen or turns the line round.
bool is_plain_name(std::string_view name) {
  constexpr std::size_t longest = 120;
  if (name.empty() || name.size() > longest || name.front() == '.' || name.front() == ' ' || name.front() == '-' ||
      name.back() == '.' || name.back() == ' ')
    return false;
  if (is_reserved(name)) return false;
  for (std::size_t at = 0; at < name.size();) {
    const auto scalar = base::next_scalar(name, at);
    if (!scalar || (*scalar >= 0x80 && *scalar < 0xC0) || (*scalar >= 0x2000 && *scalar < 0x2070) || *scalar >= 0xFFF0)
      return false;
  }
  return std::all_of(name.begin(), name.end(), [](char c) {
    const auto byte = static_cast<unsigned char>(c);
    const bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || byte >= 0x80;
    return letter || std::string_view(" ._-()").find(c) != std::string_view::npos;
  });
}

std::string field(lua_State* state, int table, const char* name) {
  lua_pushstring(state, name);
  if (lua_rawget(state, table) != LUA_TSTRING)
    raise(state, "a file of the export has no " + std::string(name) + "; give {name = \"a.html\", bytes = \"...\"}");
  std::string text(string_at(state, -1));
  lua_pop(state, 1);
  return text;
}

MadeFile read_file(lua_State* state, int table) {
  if (lua_type(state, table) != LUA_TTABLE)
    raise(state, "the export's list holds a " + std::string(luaL_typename(state, table)) +
                     "; give {name = \"a.html\", bytes = \"...\"}");
  MadeFile file{field(state, table, "name"), field(state, table, "bytes")};
  if (!is_plain_name(file.name))
    raise(state, "\"" + file.name.substr(0, 60) + "\" is no plain file name: letters, digits and . _ - only");
  return file;
}

/// An export that cannot make its file says so in a finding.
bool has_said_why(const Session& session) {
  const std::vector<Opened*> given = session.given();
  return std::any_of(given.begin(), given.end(), [](const Opened* one) { return !one->findings.empty(); });
}

}  // namespace

void read_files(lua_State* state, std::vector<MadeFile>& made) {
  const int given = lua_gettop(state);
  if (lua_type(state, given) == LUA_TSTRING) {
    made.push_back({"", std::string(string_at(state, given))});
  } else if (lua_type(state, given) == LUA_TTABLE) {
    const std::size_t count = lua_rawlen(state, given);
    if (count == 0) raise(state, "the export gave an empty list");
    if (count > most_files) raise(state, "the export gave more than " + std::to_string(most_files) + " files");
    for (std::size_t i = 1; i <= count; ++i) {
      lua_rawgeti(state, given, static_cast<lua_Integer>(i));
      MadeFile file = read_file(state, lua_gettop(state));
      const bool twice = std::any_of(made.begin(), made.end(), [&file](const MadeFile& other) {
        return base::lower(other.name) == base::lower(file.name);
      });
      if (twice) raise(state, "the export gave two files named \"" + file.name + "\"");
      spend(state, file.bytes.size() / 32);
      made.push_back(std::move(file));
      lua_pop(state, 1);
    }
  } else if (lua_type(state, given) == LUA_TNIL && has_said_why(session_of(state))) {
    return;
  } else {
    raise(state, "the export gave a " + std::string(luaL_typename(state, given)) +
                     "; it gives the bytes of a file, or a list of {name, bytes}; nil once it has said why");
  }
  std::size_t bytes = 0;
  for (const MadeFile& file : made) bytes += file.bytes.size();
  if (bytes > most_file_bytes) raise(state, "the export gave more than " + std::to_string(most_file_bytes >> 20U) + " MB");
}

}  // namespace tamis::lua
