#include "core/lua/reference.h"

#include <string_view>

#include "core/lua/globals.h"
#include "core/lua/values.h"

namespace tamis::lua {
namespace {

/// Text inside a cell of a table.
std::string cell(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == '|') out += '\\';
    out += c;
  }
  return out;
}

std::string kinds_of(const Member& member) {
  if (member.kinds.empty()) return {};
  std::string out = " (";
  for (const char c : member.kinds) out += c == ' ' ? std::string(", ") : std::string(1, c);
  return out + ")";
}

std::string row(const Member& member) {
  std::string ask = ".";
  std::string_view gives = member.words;
  if (member.call) {
    constexpr std::string_view arrow = " → ";
    const std::size_t at = gives.find(arrow);
    ask = member.type == Type::tamis ? "." : ":";
    ask += std::string(member.name) + std::string(gives.substr(0, at));
    gives = at == std::string_view::npos ? "" : gives.substr(at + arrow.size());
  } else {
    ask += member.name;
  }
  return "| `" + ask + "` | " + cell(gives) + " | " + cell(member.doc) + kinds_of(member) + " |\n";
}

}  // namespace

std::string values_reference() {
  std::string out;
  const Member* before = nullptr;
  for (const Member& member : members()) {
    if (before == nullptr || before->type != member.type)
      out += "\n### " + std::string(type_name(member.type)) + "\n\n| ask | gives | what |\n| --- | --- | --- |\n";
    out += row(member);
    before = &member;
  }
  return out + "\n";
}

std::string globals_reference() {
  std::string out;
  std::string_view library = "?";
  for (const Global& global : global_names()) {
    if (global.library != library) {
      if (!out.empty()) out += "\n";
      out += global.library.empty() ? "\n- `tamis`," : "- " + std::string(global.library) + ":";
    } else {
      out += ",";
    }
    library = global.library;
    out += " `" + std::string(global.name) + "`";
  }
  return out + "\n\n";
}

}  // namespace tamis::lua
