#include "core/record/log_time.h"

#include <charconv>
#include <cstdio>

#include "core/base/utf8.h"

namespace tamis::record {
namespace {

/// Days from 1970-01-01 of a civil date, and back (Howard Hinnant's algorithms, public domain).
long days_of(long year, unsigned month, unsigned day) {
  year -= month <= 2 ? 1 : 0;
  const long era = (year >= 0 ? year : year - 399) / 400;
  const auto of_era = static_cast<unsigned>(year - era * 400);
  const unsigned of_year = (153 * (month > 2 ? month - 3 : month + 9) + 2) / 5 + day - 1;
  return era * 146097 + static_cast<long>(of_era * 365 + of_era / 4 - of_era / 100 + of_year) - 719468;
}

bool is_day(long year, unsigned month, unsigned day) {
  constexpr unsigned lengths[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  if (month < 1 || month > 12 || day < 1 || year < 1970 || year > 2200) return false;
  const bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
  return day <= lengths[month - 1] + (month == 2 && leap ? 1U : 0U);
}

/// Takes digits off the front: from `least` to `most` of them.
std::optional<unsigned> take_digits(std::string_view& text, std::size_t least, std::size_t most) {
  std::size_t count = 0;
  while (count < text.size() && count < most && text[count] >= '0' && text[count] <= '9') ++count;
  if (count < least) return {};
  unsigned out = 0;
  std::from_chars(text.data(), text.data() + count, out);
  text.remove_prefix(count);
  return out;
}

bool take(std::string_view& text, char c) {
  if (text.empty() || text.front() != c) return false;
  text.remove_prefix(1);
  return true;
}

std::optional<long> take_day(std::string_view& text) {
  std::string_view rest = text;
  if (const auto year = take_digits(rest, 4, 4)) {
    const char between = rest.empty() ? '\0' : rest.front();
    if ((between != '-' && between != '/' && between != '.') || !take(rest, between)) return {};
    const auto month = take_digits(rest, 1, 2);
    if (!month || !take(rest, between)) return {};
    const auto day = take_digits(rest, 1, 2);
    if (!day || !is_day(*year, *month, *day)) return {};
    text = rest;
    return days_of(*year, *month, *day);
  }
  const auto day = take_digits(rest, 1, 2);
  if (!day || !take(rest, '.')) return {};
  const auto month = take_digits(rest, 1, 2);
  if (!month || !take(rest, '.')) return {};
  const auto year = take_digits(rest, 4, 4);
  if (!year || !is_day(*year, *month, *day)) return {};
  text = rest;
  return days_of(*year, *month, *day);
}

std::optional<double> take_clock(std::string_view& text) {
  std::string_view rest = text;
  const auto hour = take_digits(rest, 1, 2);
  if (!hour || !take(rest, ':')) return {};
  const auto minute = take_digits(rest, 2, 2);
  if (!minute || *minute > 59) return {};
  double seconds = 0;
  if (take(rest, ':')) {
    const auto whole = take_digits(rest, 2, 2);
    if (!whole || *whole > 59) return {};
    seconds = *whole;
    if (take(rest, '.') || take(rest, ',')) {
      std::size_t digits = rest.size();
      const auto part = take_digits(rest, 1, 6);
      if (!part) return {};
      double share = *part;
      for (digits -= rest.size(); digits > 0; --digits) share /= 10;
      seconds += share;
    }
  }
  rest = base::trimmed(rest);
  unsigned h = *hour;
  if (rest.size() >= 2 && (rest[1] == 'M' || rest[1] == 'm') &&
      std::string_view("AaPp").find(rest[0]) != std::string_view::npos) {
    if (h < 1 || h > 12) return {};
    h = h % 12 + (rest[0] == 'P' || rest[0] == 'p' ? 12 : 0);
    rest.remove_prefix(2);
  }
  if (h > 23) return {};
  text = rest;
  return h * 3600.0 + *minute * 60.0 + seconds;
}

/// "Z", "+01:00", "-0500".
void take_zone(std::string_view& text) {
  if (take(text, 'Z')) return;
  std::string_view rest = text;
  if (!take(rest, '+') && !take(rest, '-')) return;
  if (!take_digits(rest, 2, 2)) return;
  take(rest, ':');
  if (take_digits(rest, 2, 2)) text = rest;
}

std::optional<double> number_of(std::string_view text) {
  std::string plain(text);
  if (const std::size_t comma = plain.find(','); comma != std::string::npos) plain[comma] = '.';
  double out = 0;
  const auto [end, fault] = std::from_chars(plain.data(), plain.data() + plain.size(), out, std::chars_format::fixed);
  const bool good = fault == std::errc() && end == plain.data() + plain.size() && out >= 0 && out < 1e9;
  return good ? std::optional(out) : std::nullopt;
}

}  // namespace

std::optional<Moment> read_moment(std::string_view text) {
  Moment out;
  if (const auto number = number_of(text)) {
    out.number = *number;
    return out;
  }
  const auto day = take_day(text);
  if (day) {
    out.kind = Moment::Kind::date;
    out.day = *day;
    if (text.empty()) return out;
    if (!take(text, 'T') && !take(text, ' ')) return {};
    text = base::trimmed(text);
  }
  const auto clock = take_clock(text);
  if (!clock) return {};
  if (day) take_zone(text);
  if (!text.empty()) return {};
  out.kind = day ? Moment::Kind::date_and_clock : Moment::Kind::clock;
  out.clock_seconds = *clock;
  return out;
}

std::string day_text(long day) {
  const long shifted = day + 719468;
  const long era = (shifted >= 0 ? shifted : shifted - 146096) / 146097;
  const auto of_era = static_cast<unsigned>(shifted - era * 146097);
  const unsigned year_of_era = (of_era - of_era / 1460 + of_era / 36524 - of_era / 146096) / 365;
  const unsigned of_year = of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
  const unsigned part = (5 * of_year + 2) / 153;
  const unsigned d = of_year - (153 * part + 2) / 5 + 1;
  const unsigned m = part < 10 ? part + 3 : part - 9;
  const long y = static_cast<long>(year_of_era) + era * 400 + (m <= 2 ? 1 : 0);
  char out[32];
  std::snprintf(out, sizeof out, "%04ld-%02u-%02u", y, m, d);
  return out;
}

}  // namespace tamis::record
