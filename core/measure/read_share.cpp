#include <string>

#include "core/base/nearest.h"
#include "core/base/utf8.h"
#include "core/measure/name_index.h"
#include "core/measure/read.h"

namespace tamis::measure {
namespace {

using base::Ratio;

struct ShareWord {
  std::string_view language;
  std::string_view words;  ///< normal form
  int numerator, denominator;  ///< 0/1: the rest
};

constexpr ShareWord share_words[] = {
    {"en", "all", 1, 1},          {"en", "half", 1, 2},            {"en", "a half", 1, 2},
    {"en", "one half", 1, 2},     {"en", "a third", 1, 3},         {"en", "one third", 1, 3},
    {"en", "two thirds", 2, 3},   {"en", "a quarter", 1, 4},       {"en", "one quarter", 1, 4},
    {"en", "a fourth", 1, 4},     {"en", "one fourth", 1, 4},      {"en", "three quarters", 3, 4},
    {"en", "three fourths", 3, 4},{"en", "a fifth", 1, 5},         {"en", "one fifth", 1, 5},
    {"en", "a sixth", 1, 6},      {"en", "an eighth", 1, 8},       {"en", "a tenth", 1, 10},
    {"en", "the rest", 0, 1},     {"en", "rest", 0, 1},            {"en", "the remainder", 0, 1},
    {"en", "remainder", 0, 1},    {"en", "the remaining", 0, 1},   {"en", "remaining", 0, 1},
    {"fr", "tout", 1, 1},         {"fr", "la moitié", 1, 2},       {"fr", "moitié", 1, 2},
    {"fr", "un tiers", 1, 3},     {"fr", "le tiers", 1, 3},        {"fr", "deux tiers", 2, 3},
    {"fr", "les deux tiers", 2, 3}, {"fr", "un quart", 1, 4},      {"fr", "le quart", 1, 4},
    {"fr", "trois quarts", 3, 4}, {"fr", "les trois quarts", 3, 4},{"fr", "le reste", 0, 1},
    {"fr", "reste", 0, 1},        {"de", "alles", 1, 1},           {"de", "die hälfte", 1, 2},
    {"de", "hälfte", 1, 2},       {"de", "ein drittel", 1, 3},     {"de", "zwei drittel", 2, 3},
    {"de", "ein viertel", 1, 4},  {"de", "drei viertel", 3, 4},    {"de", "dreiviertel", 3, 4},
    {"de", "der rest", 0, 1},     {"de", "den rest", 0, 1},        {"de", "rest", 0, 1},
    {"es", "todo", 1, 1},         {"es", "la mitad", 1, 2},        {"es", "mitad", 1, 2},
    {"es", "un tercio", 1, 3},    {"es", "dos tercios", 2, 3},     {"es", "un cuarto", 1, 4},
    {"es", "tres cuartos", 3, 4}, {"es", "el resto", 0, 1},        {"es", "resto", 0, 1},
};

base::Finding unreadable(std::string_view text, std::string message, std::string advice) {
  base::Finding fault;
  fault.rule = "unreadable-amount";
  fault.where = {0, static_cast<std::uint32_t>(text.size())};
  fault.message = std::move(message);
  fault.advice = std::move(advice);
  return fault;
}

Share fraction(Ratio value) {
  Share share;
  share.fraction = value;
  return share;
}

const ShareWord* share_word(std::string_view text, std::string_view language) {
  constexpr std::size_t longest = 64;
  if (text.size() > longest) return nullptr;
  const std::string words = normal_form(text);
  for (const ShareWord& word : share_words) {
    if (word.words == words && (word.language == language || word.language == "en")) return &word;
  }
  return nullptr;
}

/// "3 %": a share written in hundredths.
base::Result<Share> read_percent(std::string_view text, const Reading& reading) {
  const auto number = read_number(text.substr(0, text.size() - 1), reading);
  if (!number) return number.fault();
  const Ratio value = *number / 100;
  if (value.ok() && value <= 1) return fraction(value);
  return unreadable(text, "a share of " + number->text() + " % is more than the whole", "write a share up to 100 %");
}

/// "1/2 of it" in figures: a number that is no count.
base::Result<Share> read_fraction(std::string_view text, Ratio value) {
  if (value > 0 && value <= 1) return fraction(value);
  return unreadable(text, "a share of " + value.text() + " is more than the whole",
                    "write a share up to 1, or an amount with its unit");
}

}  // namespace

base::Result<Share> read_share(std::string_view text, const Reading& reading) {
  const std::string_view inner = base::trimmed(text);
  if (const ShareWord* word = share_word(inner, primary_language(reading.language))) {
    Share share = fraction(Ratio(word->numerator, word->denominator));
    if (word->numerator == 0) share.form = Share::Form::rest;
    return share;
  }
  if (inner.ends_with('%')) return read_percent(inner, reading);
  Reading figures = reading;
  const auto number = read_number(inner, figures);
  if (number && (!number->whole() || *number == 1)) return read_fraction(text, *number);
  const auto amount = read_amount(text, amount_kinds & ~length_kinds, reading);
  if (!amount) return amount.fault();
  Share share;
  share.form = Share::Form::amount;
  share.amount = *amount;
  return share;
}

}  // namespace tamis::measure
