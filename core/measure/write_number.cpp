#include <algorithm>
#include <string>

#include "core/base/utf8.h"
#include "core/measure/name_index.h"
#include "core/measure/number.h"
#include "core/measure/write.h"

namespace tamis::measure {
namespace {

using base::Ratio;

constexpr std::string_view no_break_space = "\u00A0";
constexpr std::string_view narrow_no_break_space = "\u202F";
constexpr std::string_view minus_sign = "\u2212";

/// Denominators a cook meets; others are written as decimals.
constexpr std::int64_t largest_denominator = 16;

std::string_view glyph(std::int64_t numerator, std::int64_t denominator) {
  struct Glyph {
    std::int64_t numerator, denominator;
    std::string_view text;
  };
  static constexpr Glyph glyphs[] = {{1, 4, "¼"}, {1, 2, "½"}, {3, 4, "¾"}, {1, 3, "⅓"}, {2, 3, "⅔"},
                                     {1, 8, "⅛"}, {3, 8, "⅜"}, {5, 8, "⅝"}, {7, 8, "⅞"}};
  for (const Glyph& known : glyphs) {
    if (known.numerator == numerator && known.denominator == denominator) return known.text;
  }
  return {};
}

/// French groups from four digits, German and Spanish from five (DIN 5008, the Spanish academy; from memory), all
/// with a narrow no-break space; in English no sign is put, for a comma would have to be asked about.
std::string grouped(std::string digits, std::string_view language) {
  const std::size_t least = language == "fr" ? 4 : language == "de" || language == "es" ? 5 : digits.size() + 1;
  if (digits.size() < least) return digits;
  for (std::size_t at = digits.size(); at > 3;) {
    at -= 3;
    digits.insert(at, narrow_no_break_space);
  }
  return digits;
}

std::string with_fraction(Ratio value, std::string_view language) {
  const std::int64_t whole = value.floor();
  const Ratio part = value - whole;
  const std::string_view sign = glyph(part.numerator(), part.denominator());
  std::string out = whole == 0 ? std::string() : grouped(std::to_string(whole), language) + std::string(no_break_space);
  return out + (sign.empty() ? part.text() : std::string(sign));
}

/// Up to `digits` significant digits, without zeros at the end.
std::string decimal(Ratio value, char sign, int digits, std::string_view language) {
  int places = digits - (value < 1 ? 0 : static_cast<int>(std::to_string(value.floor()).size()));
  for (Ratio leading = value; leading.ok() && leading > 0 && leading < Ratio(1, 10) && places < 15; leading = leading * 10) ++places;
  const std::string figures = value.decimal(std::clamp(places, 0, 15));
  const std::size_t point = std::min(figures.find('.'), figures.size());
  std::string fraction = figures.substr(std::min(point + 1, figures.size()));
  while (!fraction.empty() && fraction.back() == '0') fraction.pop_back();
  const std::string out = grouped(figures.substr(0, point), language);
  return fraction.empty() ? out : out + sign + fraction;
}

}  // namespace

std::string write_number(Ratio value, const Writing& writing) {
  if (!value.ok()) return "overflow";
  if (value < 0) return std::string(minus_sign) + write_number(-value, writing);
  const std::string language = primary_language(writing.language);
  if (value.whole()) return grouped(std::to_string(value.numerator()), language);
  if (writing.fractions && value.denominator() <= largest_denominator) return with_fraction(value, language);
  return decimal(value, decimal_sign(writing.language), writing.digits, language);
}

}  // namespace tamis::measure
