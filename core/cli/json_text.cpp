#include "core/cli/json_text.h"

#include <array>
#include <charconv>
#include <cmath>

#include "core/base/utf8.h"
#include "core/format/format.h"

namespace tamis::cli {
namespace {

/// Every byte that is not part of valid UTF-8 as U+FFFD.
std::string valid_text(std::string_view text) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) base::append_scalar(out, base::next_scalar(text, at).value_or(0xFFFD));
  return out;
}

}  // namespace

std::string json_string(std::string_view text) {
  const bool valid = base::find_invalid_utf8(text) == std::string_view::npos;
  return '"' + (valid ? format::escaped(text, fiche::Spelling::json, true)
                      : format::escaped(valid_text(text), fiche::Spelling::json, true)) + '"';
}

JsonList::JsonList(std::string& out, char open, char close, std::string_view between)
    : out_(out), close_(close), between_(between) {
  out_ += open;
}

void JsonList::close() {
  if (!closed_) out_ += close_;
  closed_ = true;
}

void JsonList::begin() {
  if (!first_) (out_ += ',') += between_;
  first_ = false;
}

void JsonList::begin(std::string_view name) {
  begin();
  (out_ += json_string(name)) += ": ";
}

void JsonList::item(std::string_view json) {
  begin();
  out_ += json;
}

void JsonList::member(std::string_view name, std::string_view json) {
  begin(name);
  out_ += json;
}

void JsonList::text(std::string_view name, std::string_view value) { member(name, json_string(value)); }

std::string json_number(double value) {
  if (!std::isfinite(value)) return "null";
  std::array<char, 32> digits{};
  const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), value).ptr;
  return {digits.data(), end};
}

}  // namespace tamis::cli
