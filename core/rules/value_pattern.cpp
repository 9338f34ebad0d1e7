#include "core/rules/value_pattern.h"

#include <algorithm>

#include "core/base/utf8.h"

namespace tamis::rules {
namespace {

using fiche::Value;

bool digit(char c) { return c >= '0' && c <= '9'; }
bool small(char c) { return c >= 'a' && c <= 'z'; }
bool letter(char c) { return small(c) || (c >= 'A' && c <= 'Z'); }

bool all(std::string_view text, bool (*is)(char)) { return !text.empty() && std::all_of(text.begin(), text.end(), is); }

bool is_id(std::string_view word) {
  const auto inner = [](char c) { return letter(c) || digit(c) || c == '_' || c == '.' || c == '-'; };
  return !word.empty() && (letter(word[0]) || word[0] == '_') && all(word, inner);
}
bool is_word(std::string_view word) {
  const auto inner = [](char c) { return small(c) || digit(c) || c == '-'; };
  return !word.empty() && small(word[0]) && all(word, inner);
}
bool is_action(std::string_view word) {
  const auto inner = [](char c) { return small(c) || c == '-'; };
  return !word.empty() && small(word[0]) && all(word, inner);
}

bool words_are(std::string_view text, bool (*is)(std::string_view)) {
  bool good = !text.empty();
  for_each_word(text, [&](std::string_view word, std::size_t) { good = good && is(word); });
  return good;
}

int number(std::string_view digits) {
  int out = 0;
  for (const char c : digits) out = 10 * out + (c - '0');
  return out;
}

/// YYYY-MM-DD of a day that exists (ISO 8601, proleptic Gregorian).
bool is_date(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return false;
  if (!all(text.substr(0, 4), digit) || !all(text.substr(5, 2), digit) || !all(text.substr(8, 2), digit)) return false;
  const int year = number(text.substr(0, 4));
  const int month = number(text.substr(5, 2));
  const int day = number(text.substr(8, 2));
  if (year < 1 || month < 1 || month > 12 || day < 1) return false;
  constexpr int days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  const bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
  return day <= days[month - 1] + (month == 2 && leap ? 1 : 0);
}

bool is_clock(std::string_view text) {
  if (text.size() != 5 || text[2] != ':' || !all(text.substr(0, 2), digit) || !all(text.substr(3, 2), digit)) return false;
  const int hour = number(text.substr(0, 2));
  const int minute = number(text.substr(3, 2));
  return hour <= 24 && minute <= 59;
}

bool is_money(std::string_view text) {
  const std::size_t space = text.find(' ');
  if (space == text.npos || text.size() != space + 4) return false;
  const auto capital = [](char c) { return c >= 'A' && c <= 'Z'; };
  if (!all(text.substr(space + 1), capital)) return false;
  const std::string_view figure = text.substr(0, space);
  const std::size_t sign = figure.find_first_of(".,");
  if (sign == figure.npos) return all(figure, digit);
  return all(figure.substr(0, sign), digit) && all(figure.substr(sign + 1), digit);
}

}  // namespace

bool fits(Value value, std::string_view raw) {
  const std::string_view text = base::trimmed(raw);
  switch (value) {
    case Value::id:
    case Value::idref: return is_id(text);
    case Value::idrefs: return words_are(text, is_id);
    case Value::food: return is_word(text);
    case Value::words: return words_are(text, is_word);
    case Value::actions: return words_are(text, is_action);
    case Value::date: return is_date(text);
    case Value::clock: return is_clock(text);
    case Value::whole: return text.size() <= 9 && all(text, digit);
    case Value::money: return is_money(text);
    default: return true;
  }
}

std::string_view form_of(Value value) {
  switch (value) {
    case Value::id:
    case Value::idref: return "a letter or _ first, then letters, digits, - _ and .: walnut-cream";
    case Value::idrefs: return "ids with a space between them: milk yolks";
    case Value::food: return "small letters, digits and -: flour-wheat-white";
    case Value::words: return "words of small letters, digits and -: blast-chiller";
    case Value::actions: return "words of small letters and -: fold chill";
    case Value::date: return "year, month, day: 2026-03-31";
    case Value::clock: return "hour and minute: 07:30";
    case Value::whole: return "a whole number: 3";
    case Value::money: return "a figure and the currency's three letters: 12.50 EUR";
    default: return "";
  }
}

}  // namespace tamis::rules
