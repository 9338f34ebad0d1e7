#include <algorithm>

#include "core/base/utf8.h"
#include "core/measure/read.h"

namespace tamis::measure {
namespace {

/// Start and size of the next "×", "x", "X", "by", "par", "mal", "por" or "*" between figures; npos when none.
struct Cross {
  std::size_t at = std::string_view::npos;
  std::size_t size = 0;
};

bool is_break(std::string_view text, std::size_t at) {
  if (at >= text.size()) return true;
  const char c = text[at];
  return c == ' ' || static_cast<unsigned char>(c) >= 0x80 || (c >= '0' && c <= '9') || c == '.';
}

Cross find_cross(std::string_view text) {
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (text.substr(at).starts_with("×")) return {at, 2};
    if (text[at] == '*') return {at, 1};
    if ((text[at] == 'x' || text[at] == 'X') && is_break(text, at + 1)) return {at, 1};
    for (const std::string_view word : {" by ", " par ", " mal ", " por "}) {
      if (text.substr(at).starts_with(word)) return {at, word.size()};
    }
  }
  return {};
}

base::Finding moved(base::Finding finding, std::size_t by) {
  finding.where.begin += static_cast<std::uint32_t>(by);
  finding.where.end += static_cast<std::uint32_t>(by);
  return finding;
}

const Unit* unit_of(const Amount& amount) {
  const auto& parts = amount.form == Amount::Form::at_most ? amount.high : amount.low;
  return parts.empty() ? nullptr : parts.front().unit;
}

/// A figure without a unit, "12" in "12 × 20 in", has the unit of the next one that has.
void give_unit(Amount& amount, const Unit& unit) {
  for (auto* side : {&amount.low, &amount.high}) {
    for (Quantity& part : *side) part.unit = &unit;
  }
  amount.kind = Kind::length;
}

}  // namespace

base::Result<std::vector<Amount>> read_lengths(std::string_view text, const Reading& reading) {
  std::vector<Amount> lengths;
  constexpr std::size_t most = 8;
  std::size_t begin = 0;
  while (true) {
    const std::string_view rest = text.substr(begin);
    const Cross cross = find_cross(rest);
    const std::string_view piece = rest.substr(0, std::min(cross.at, rest.size()));
    const bool last = cross.at == std::string_view::npos;
    auto read = read_amount(piece, last ? length_kinds : length_kinds | set_of(Kind::count), reading);
    if (!read) return moved(read.fault(), begin);
    lengths.push_back(*read);
    if (last) break;
    if (lengths.size() == most) {
      base::Finding fault;
      fault.rule = "unreadable-amount";
      fault.where = {static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(text.size())};
      fault.message = "more than " + std::to_string(most) + " lengths in a row";
      fault.advice = "write length × width × height";
      return fault;
    }
    begin += cross.at + cross.size;
  }
  for (std::size_t i = lengths.size(); i-- > 1;) {
    const Unit* bare = unit_of(lengths[i - 1]);
    if (bare != nullptr && bare->kind == Kind::count) give_unit(lengths[i - 1], *unit_of(lengths[i]));
  }
  return lengths;
}

}  // namespace tamis::measure
