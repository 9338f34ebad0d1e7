#include "core/lua/type_file.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <string_view>
#include <vector>

#include "core/lua/reference.h"
#include "core/lua/values.h"

namespace tamis::lua {
namespace {

std::vector<std::string_view> parts(std::string_view text, std::string_view between) {
  std::vector<std::string_view> out;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(between), text.size());
    out.push_back(text.substr(0, end));
    text.remove_prefix(std::min(end + between.size(), text.size()));
  }
  return out;
}

bool is_type_of_ours(std::string_view word) {
  constexpr auto last = static_cast<unsigned>(Type::taking);
  for (unsigned type = 0; type <= last; ++type)
    if (type_name(static_cast<Type>(type)) == word) return true;
  return false;
}

/// One type as api.inc writes it: "list of element" is tamis.element[], "string?" may be nil.
std::string type_of(std::string_view words) {
  constexpr std::string_view list_of = "list of ";
  if (words.starts_with(list_of)) return type_of(words.substr(list_of.size())) + "[]";
  const bool open = words.ends_with('?');
  if (open) words.remove_suffix(1);
  std::string out;
  if (words == "list") out = "table";
  if (words == "reason") out = "string|nil";
  if (out.empty()) out = (is_type_of_ours(words) ? "tamis." : "") + std::string(words);
  return out + (open ? "|nil" : "");
}

/// What a call gives: "fiche? reason", "list of string, list of string", "amount, share or nil; reason".
std::vector<std::string> types_given(std::string_view words) {
  std::vector<std::string> out;
  for (const std::string_view value : parts(words, "; ")) {
    if (const std::size_t last = value.find(" or "); last != std::string_view::npos) {
      std::string either;
      for (const std::string_view one : parts(value.substr(0, last), ", "))
        either += (one == "list" ? "tamis.amount[]" : type_of(one)) + "|";
      out.push_back(either + type_of(value.substr(last + 4)));
    } else {
      std::string list;  // "list of", until what it is of
      for (std::string_view word : parts(value, " ")) {
        if (word.ends_with(',')) word.remove_suffix(1);
        if (word == "of") {
          out.pop_back();
          list = "list of ";
        } else {
          out.push_back(type_of(list + std::string(word)));
          list.clear();
        }
      }
    }
  }
  return out;
}

/// Of an argument by its name; text where it is not in this list.
std::string_view argument_type(std::string_view name) {
  struct Row {
    std::string_view name, type;
  };
  constexpr std::array<Row, 8> rows{{{"number", "number"},
                                     {"first", "integer"},
                                     {"last", "integer"},
                                     {"list", "string[]"},
                                     {"value", "any"},
                                     {"before", "tamis.element|tamis.text"},
                                     {"where", "tamis.element|tamis.text|tamis.place"},
                                     {"for", "tamis.food|\"oven\""}}};
  for (const Row& row : rows)
    if (row.name == name) return row.type;
  return "string";
}

std::string kinds_of(const Member& member) {
  std::string out;
  for (const std::string_view kind : parts(member.kinds, " ")) out += (out.empty() ? " (" : ", ") + std::string(kind);
  return out.empty() ? out : out + ")";
}

std::string call(const Member& member) {
  constexpr std::string_view arrow = " → ";
  const std::size_t at = std::min(member.words.find(arrow), member.words.size());
  std::string_view list = member.words.substr(0, at);
  assert(list.starts_with('(') && list.ends_with(')'));
  list = list.substr(1, list.size() - 2);
  std::string out = "\n---" + std::string(member.doc) + kinds_of(member) + "\n";
  std::string names;
  for (std::string_view name : parts(list, ", ")) {
    const bool open = name.ends_with('?') || name == "where";  // no place: the title
    if (name.ends_with('?')) name.remove_suffix(1);
    const bool any = name.ends_with("...");
    std::string word(any ? "..." : name);
    if (word == "for") word = "for_";  // a word of Lua's own
    out += "---@param " + word + (open && !any ? "? " : " ") + std::string(argument_type(name)) + "\n";
    names += (names.empty() ? "" : ", ") + word;
  }
  if (at < member.words.size())
    for (const std::string& type : types_given(member.words.substr(at + arrow.size()))) out += "---@return " + type + "\n";
  const std::string_view between = member.type == Type::tamis ? "." : ":";
  out += "function " + std::string(type_name(member.type)) + std::string(between) + std::string(member.name);
  return out + "(" + names + ") end\n";
}

std::string_view operators(Type type) {
  if (type == Type::settings) return "---@field [string] string|number|boolean|string[]|nil\n";
  if (type != Type::amount) return {};
  return "---@operator add(tamis.amount): tamis.amount\n"
         "---@operator sub(tamis.amount): tamis.amount\n"
         "---@operator mul(number): tamis.amount\n"
         "---@operator div(number): tamis.amount\n"
         "---@operator div(tamis.amount): number\n"
         "---@operator unm: tamis.amount\n"
         "---@operator concat(any): string\n";
}

/// A class: its fields, then its calls.
std::string class_of(Type type) {
  const std::string name(type_name(type));
  std::string out = "\n---@class tamis." + name + "\n";
  std::string calls;
  for (const Member& member : members()) {
    if (member.type != type) continue;
    if (member.call)
      calls += call(member);
    else
      out += "---@field " + std::string(member.name) + " " + type_of(member.words) + " " + std::string(member.doc) +
             kinds_of(member) + "\n";
  }
  out += operators(type);
  return out + (type == Type::tamis ? "" : "local ") + name + " = {}\n" + calls;
}

}  // namespace

std::string type_file() {
  std::string out =
      "---@meta\n"
      "-- What a plugin sees, for editors that read these annotations. Made from core/lua/api.inc and globals.inc; do not\n"
      "-- edit. Write ---@param fiche tamis.fiche above a plugin's function. Of Lua 5.4 a plugin has, and no others:\n";
  std::string globals = globals_reference();
  std::erase(globals, '`');
  for (const std::string_view line : parts(globals, "\n"))
    if (!line.empty()) out += "-- " + std::string(line.starts_with("- ") ? line.substr(2) : line) + "\n";
  for (unsigned type = 0; type <= static_cast<unsigned>(Type::taking); ++type) out += class_of(static_cast<Type>(type));
  return out;
}

}  // namespace tamis::lua
