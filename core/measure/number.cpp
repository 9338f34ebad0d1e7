// Numbers as people write them. Digits and their grouping signs are taken first (scan_figure), then what can follow
// a whole number: a fraction bar, a fraction glyph, or a space or hyphen and a fraction.

#include "core/measure/number.h"

#include <string>

#include "core/base/utf8.h"
#include "core/measure/name_index.h"
#include "core/measure/phrase.h"

namespace tamis::measure {
namespace {

using base::Ratio;

/// More digits than any figure has, and few enough to keep reading quick.
constexpr std::size_t most_digits = 40;

char32_t scalar_at(std::string_view text, std::size_t at) {
  return at < text.size() ? base::next_scalar(text, at).value_or(0) : 0;
}

std::size_t scalar_size(std::string_view text, std::size_t at) {
  const std::size_t start = at;
  (void)base::next_scalar(text, at);
  return at - start;
}

std::size_t count_digits(std::string_view text, std::size_t at) {
  std::size_t end = at;
  while (end < text.size() && text[end] >= '0' && text[end] <= '9') ++end;
  return end - at;
}

std::optional<Ratio> glyph_value(char32_t c) {
  struct Glyph {
    char32_t scalar;
    int numerator, denominator;
  };
  static constexpr Glyph glyphs[] = {{U'¼', 1, 4}, {U'½', 1, 2}, {U'¾', 3, 4}, {U'⅓', 1, 3}, {U'⅔', 2, 3},
                                     {U'⅕', 1, 5}, {U'⅖', 2, 5}, {U'⅗', 3, 5}, {U'⅘', 4, 5}, {U'⅙', 1, 6},
                                     {U'⅚', 5, 6}, {U'⅛', 1, 8}, {U'⅜', 3, 8}, {U'⅝', 5, 8}, {U'⅞', 7, 8},
                                     {U'⅐', 1, 7}, {U'⅑', 1, 9}, {U'⅒', 1, 10}};
  for (const Glyph& glyph : glyphs) {
    if (glyph.scalar == c) return Ratio(glyph.numerator, glyph.denominator);
  }
  return std::nullopt;
}

bool is_bar(char32_t c) { return c == U'/' || c == U'⁄' || c == U'∕'; }
bool is_hyphen(char32_t c) { return c == U'-' || c == U'‐' || c == U'‑'; }

base::Finding fault(std::string_view rule, std::size_t end, std::string message, std::string advice) {
  base::Finding finding;
  finding.rule = rule;
  finding.where = {0, static_cast<std::uint32_t>(end)};
  finding.message = std::move(message);
  finding.advice = std::move(advice);
  return finding;
}

std::string quoted(std::string_view text) { return "\"" + std::string(text) + "\""; }

/// Digits with the signs between them: "1", "1,500", "1.234,5", "1 500".
struct Figure {
  static constexpr std::size_t most = 16;
  std::size_t used = 0;
  std::size_t count = 0;
  std::string_view groups[most];
  char signs[most] = {};  ///< between the groups: '.', ',', or ' ' for a space or an apostrophe
};

bool groups_by_space(std::string_view text, std::size_t at, const Figure& figure, const NumberStyle& style) {
  const char32_t c = scalar_at(text, at);
  const bool apostrophe = c == U'\'' || c == U'’';
  const bool plain = c == U' ' || c == U'\t';
  if (!apostrophe && !(base::is_space(c) && c != U'\n' && c != U'\r')) return false;
  if (plain && !style.space_groups) return false;
  const std::size_t last = figure.groups[figure.count - 1].size();
  if (last > 3 || (figure.count > 1 && last != 3) || figure.groups[0].front() == '0') return false;
  const std::size_t next = at + scalar_size(text, at);
  if (count_digits(text, next) != 3) return false;
  const char32_t after = scalar_at(text, next + 3);
  return !is_bar(after) && !(plain && base::is_space(after) && glyph_value(scalar_at(text, next + 3 + 1)));
}

Figure scan_figure(std::string_view text, const NumberStyle& style) {
  Figure figure;
  std::size_t digits = count_digits(text, 0);
  while (digits > 0) {
    figure.groups[figure.count++] = text.substr(figure.used, digits);
    figure.used += digits;
    const std::size_t at = figure.used;
    if (at >= text.size() || figure.count == Figure::most) break;
    const bool sign = text[at] == '.' || text[at] == ',';
    if (!sign && !groups_by_space(text, at, figure, style)) break;
    const std::size_t next = at + scalar_size(text, at);
    digits = count_digits(text, next);
    if (digits == 0) break;
    figure.signs[figure.count - 1] = sign ? text[at] : ' ';
    figure.used = next;
  }
  return figure;
}

bool groups_of_three(const Figure& figure, std::size_t count) {
  if (figure.groups[0].size() > 3 || figure.groups[0].front() == '0') return false;
  for (std::size_t i = 1; i < count; ++i) {
    if (figure.groups[i].size() != 3) return false;
  }
  return true;
}

std::string other_sign(const NumberStyle& style) { return style.decimal == '.' ? "," : "."; }

base::Finding wrong_sign(std::string_view written, const Figure& figure, const NumberStyle& style) {
  const std::string right = std::string(figure.groups[0]) + style.decimal + std::string(figure.groups[1]);
  return fault("unreadable-amount", written.size(),
               quoted(written) + " has " + (style.decimal == '.' ? "a comma" : "a point") +
                   " where a decimal " + (style.decimal == '.' ? "point" : "comma") + " was expected",
               "write " + right);
}

base::Finding ambiguous(std::string_view written, const Figure& figure, const NumberStyle& style) {
  const std::string whole = std::string(figure.groups[0]) + std::string(figure.groups[1]);
  const std::string parts = std::string(figure.groups[0]) + style.decimal + std::string(figure.groups[1]);
  return fault("ambiguous-number", written.size(),
               quoted(written) + " can be " + whole + " or " + parts + "; the sign " + quoted(other_sign(style)) +
                   " does not say which",
               "write " + whole + " or " + parts + ", or declare the decimal sign");
}

Number whole_figure(const Figure& figure, std::size_t decimals_from) {
  std::string plain;
  for (std::size_t i = 0; i < figure.count; ++i) {
    if (i == decimals_from) plain += '.';
    plain += figure.groups[i];
  }
  Number number;
  number.used = figure.used;
  const auto value = plain.size() > most_digits ? std::nullopt : Ratio::parse(plain);
  if (value) {
    number.value = *value;
  } else {
    number.fault = fault("unreadable-amount", figure.used, "a figure of " + std::to_string(plain.size()) +
                         " digits is more than can be kept exactly", "write it with fewer digits");
  }
  return number;
}

/// What the signs between the groups mean.
Number read_figure(std::string_view text, const NumberStyle& style) {
  const Figure figure = scan_figure(text, style);
  if (figure.count == 0) return {};
  const std::string_view written = text.substr(0, figure.used);
  const std::size_t count = figure.count;
  constexpr std::size_t no_decimals = static_cast<std::size_t>(-1);
  if (count == 1) return whole_figure(figure, no_decimals);
  const bool decimals = figure.signs[count - 2] == style.decimal;
  const std::size_t whole_groups = decimals ? count - 1 : count;
  if (decimals && whole_groups == 1) return whole_figure(figure, 1);

  Number number;
  number.used = figure.used;
  bool one_sign = true;
  for (std::size_t i = 0; i + 1 < whole_groups; ++i) one_sign = one_sign && figure.signs[i] == figure.signs[0];
  if (!one_sign || figure.signs[0] == style.decimal || !groups_of_three(figure, whole_groups)) {
    number.fault = count == 2 && figure.signs[0] != ' '
                       ? wrong_sign(written, figure, style)
                       : fault("unreadable-amount", figure.used, quoted(written) + " is not grouped as numbers are",
                               "write the figure without grouping signs");
    return number;
  }
  if (count == 2 && figure.signs[0] != ' ' && !style.declared) {
    number.fault = ambiguous(written, figure, style);
    return number;
  }
  return whole_figure(figure, decimals ? count - 1 : no_decimals);
}

/// "1/2" at the start of the text, both in plain digits; 0 bytes when there is none.
Number scan_fraction(std::string_view text) {
  const std::size_t top = count_digits(text, 0);
  if (top == 0 || !is_bar(scalar_at(text, top))) return {};
  const std::size_t bottom_at = top + scalar_size(text, top);
  const std::size_t bottom = count_digits(text, bottom_at);
  if (bottom == 0) return {};
  Number number;
  number.used = bottom_at + bottom;
  const bool too_long = top > most_digits || bottom > most_digits;
  const auto value = too_long ? std::nullopt
                              : Ratio::parse(std::string(text.substr(0, top)) + "/" +
                                             std::string(text.substr(bottom_at, bottom)));
  if (value && value->ok()) {
    number.value = *value;
  } else {
    number.fault = fault("unreadable-amount", number.used, "a fraction with this denominator cannot be read",
                         "write a fraction such as 1/2");
  }
  return number;
}

/// A fraction below one, as a glyph or in digits: what can follow a whole number.
Number scan_part(std::string_view text) {
  if (const auto glyph = glyph_value(scalar_at(text, 0))) {
    Number number;
    number.used = scalar_size(text, 0);
    number.value = *glyph;
    return number;
  }
  const Number fraction = scan_fraction(text);
  return fraction.used != 0 && !fraction.fault && fraction.value > 0 && fraction.value < 1 ? fraction : Number{};
}

std::size_t skip_spaces(std::string_view text, std::size_t at) {
  while (at < text.size() && base::is_space(scalar_at(text, at))) at += scalar_size(text, at);
  return at;
}

/// " and a half" after a whole number.
void add_half(std::string_view text, const NumberStyle& style, Number& number) {
  const std::size_t gap = skip_spaces(text, number.used);
  const std::size_t half = match_phrase(text.substr(gap), PhraseRole::and_half, style.language);
  if (half == 0) return;
  number.used = gap + half;
  number.value = number.value + Ratio(1, 2);
}

/// After a whole number: "½", " ½", "-½", " 1/2", "-1/2", " and 1/2", " and a half".
void add_fraction(std::string_view text, const NumberStyle& style, Number& number) {
  const std::size_t at = number.used;
  add_half(text, style, number);
  if (number.used != at) return;
  std::size_t start = skip_spaces(text, at);
  if (start == at && is_hyphen(scalar_at(text, at))) start = at + scalar_size(text, at);
  const std::size_t plus = match_phrase(text.substr(start), PhraseRole::plus, style.language);
  if (start > at && plus > 1) start = skip_spaces(text, start + plus);
  const Number part = scan_part(text.substr(start));
  const bool touching = start == at && !glyph_value(scalar_at(text, at));
  if (part.used == 0 || touching) return;
  number.value = number.value + part.value;
  number.used = start + part.used;
}

Number scan_word(std::string_view text, const NumberStyle& style) {
  const NumberWord word = match_number_word(text, style.language);
  Number number;
  number.used = word.used;
  number.value = word.value;
  number.bare = word.bare;
  if (word.used == 0 || !word.value.whole()) return number;
  add_half(text, style, number);
  return number;
}

Number scan_unsigned(std::string_view text, const NumberStyle& style) {
  if (text.empty()) return {};
  if (const Number part = scan_part(text); part.used != 0) return part;
  if (const Number fraction = scan_fraction(text); fraction.used != 0) return fraction;
  if (text[0] == style.decimal && count_digits(text, 1) > 0) {
    Figure figure;
    const std::size_t digits = count_digits(text, 1);
    figure.used = 1 + digits;
    figure.count = 2;
    figure.groups[0] = "0";
    figure.groups[1] = text.substr(1, digits);
    return whole_figure(figure, 1);
  }
  Number number = read_figure(text, style);
  if (number.used == 0) return style.word_groups ? scan_word(text, style) : Number{};
  if (number.fault || !number.value.whole()) return number;
  add_fraction(text, style, number);
  return number;
}

}  // namespace

char decimal_sign(std::string_view language) {
  const std::string primary = primary_language(language);
  if (primary != "fr" && primary != "de" && primary != "es") return '.';
  static constexpr std::string_view with_point[] = {"de-CH", "de-LI", "es-419", "es-DO", "es-GT", "es-HN", "es-MX",
                                                    "es-NI", "es-PA", "es-PE", "es-PR", "es-SV", "es-US"};
  for (const std::string_view tag : with_point) {
    if (language == tag) return '.';
  }
  return ',';
}

Number scan_number(std::string_view text, const NumberStyle& style) {
  Number number = scan_unsigned(text, style);
  if (number.used == 0 || number.fault) return number;
  // Digits or signs that run on ("1/2/3", "½5", "1.2.3") make it no number at all.
  const char32_t after = scalar_at(text, number.used);
  const char32_t first = scalar_at(text, 0);
  const bool figures = is_digit(first) || first == U'.' || first == U',' || glyph_value(first).has_value();
  const bool runs_on = is_digit(after) || is_bar(after) || glyph_value(after).has_value();
  if (figures && runs_on) {
    number.fault = fault("unreadable-amount", number.used, quoted(text.substr(0, number.used)) +
                         " runs on into more digits", "write one figure, such as 1 1/2");
  }
  return number;
}

}  // namespace tamis::measure
