#include "core/record/log_columns.h"

#include <algorithm>
#include <charconv>
#include <vector>

#include "core/base/utf8.h"
#include "core/record/log_time.h"

namespace tamis::record {
namespace {

constexpr std::size_t most_lines_before = 40;

using Words = std::vector<std::string>;

/// Words of a heading in lower case; ° belongs to them.
Words words_of(std::string_view text) {
  Words out(1);
  for (const char c : base::lower(text)) {
    const bool part = (c >= 'a' && c <= 'z') || (static_cast<unsigned char>(c) & 0x80U) != 0;
    if (part) {
      out.back() += c;
    } else if (!out.back().empty()) {
      out.emplace_back();
    }
  }
  if (out.back().empty()) out.pop_back();
  return out;
}

bool has(const Words& words, std::initializer_list<std::string_view> any) {
  return std::any_of(words.begin(), words.end(),
                     [&](const std::string& word) { return std::find(any.begin(), any.end(), word) != any.end(); });
}

struct Heading {
  bool day = false, time = false, celsius = false;
  bool around = false;  ///< of the oven or the room, not of the food
  double number_seconds = 0;
  Scale scale = Scale::unsaid;
};

Heading read_heading(std::string_view text) {
  const Words words = words_of(text);
  Heading out;
  if (has(words, {"c", "°c", "ºc", "degc", "celsius", "tempc"})) out.scale = Scale::celsius;
  if (has(words, {"f", "°f", "ºf", "degf", "fahrenheit", "tempf"})) out.scale = Scale::fahrenheit;
  out.celsius = out.scale != Scale::unsaid ||
                has(words, {"temp", "temperature", "température", "temperatur", "temperatura", "core", "probe", "sonde", "kern",
                            "kerntemperatur", "cœur", "coeur", "sonda", "corazón", "°"});
  if (has(words, {"s", "sec", "secs", "second", "seconds", "secondes", "sekunden", "segundos"})) out.number_seconds = 1;
  if (has(words, {"min", "mins", "minute", "minutes", "minuten", "minutos"})) out.number_seconds = 60;
  if (has(words, {"h", "hr", "hrs", "hour", "hours", "stunden", "heures", "horas"})) out.number_seconds = 3600;
  out.day = has(words, {"date", "day", "datum", "fecha", "jour"});
  out.time = out.number_seconds > 0 || has(words, {"time", "timestamp", "datetime", "clock", "elapsed", "heure", "temps",
                                                   "zeit", "uhrzeit", "hora", "tiempo"});
  out.around = has(
      words, {"oven", "air", "ambient", "chamber", "room", "fridge", "four", "air", "ofen", "raum", "luft", "horno", "aire"});
  if (out.celsius) out.day = out.time = false;
  return out;
}

base::Finding fault(const Csv& table, std::size_t row, std::string message, std::string advice) {
  base::Finding out;
  out.rule = "log-unreadable";
  if (row < table.rows.size()) out.where = table.rows[row].where;
  out.message = std::move(message);
  out.advice = std::move(advice);
  return out;
}

bool is_value(const CsvField& field) { return read_moment(field.text).has_value() || read_degrees(field.text).has_value(); }

/// The temperatures that a heading offers: their columns; those of the oven's air only where there is no other.
std::vector<std::size_t> offered(const std::vector<Heading>& headings) {
  std::vector<std::size_t> out;
  for (std::size_t i = 0; i < headings.size(); ++i) {
    if (headings[i].celsius && !headings[i].around) out.push_back(i);
  }
  for (std::size_t i = 0; out.empty() && i < headings.size(); ++i) {
    if (headings[i].celsius) out.push_back(i);
  }
  if (!out.empty() || headings.size() != 2) return out;
  return headings[0].time || headings[0].day ? std::vector<std::size_t>{1} : std::vector<std::size_t>{0};
}

std::string list_of(const CsvRow& row, const std::vector<std::size_t>& columns) {
  std::string out;
  for (const std::size_t i : columns) out += (out.empty() ? "\"" : ", \"") + row.fields[i].text + "\"";
  return out;
}

/// The column that the user means, of those offered.
std::optional<std::size_t> chosen(const CsvRow& row, const std::vector<std::size_t>& columns, const std::string& wish) {
  if (wish.empty()) return columns.size() == 1 ? std::optional(columns.front()) : std::nullopt;
  for (const std::size_t i : columns) {
    if (base::lower(row.fields[i].text) == base::lower(wish)) return i;
  }
  std::size_t number = 0;
  const auto [end, bad] = std::from_chars(wish.data(), wish.data() + wish.size(), number);
  const bool is_number = bad == std::errc() && end == wish.data() + wish.size() && number >= 1 && number <= columns.size();
  return is_number ? std::optional(columns[number - 1]) : std::nullopt;
}

LogColumns with_heading(const Csv& table, std::size_t at, const std::vector<Heading>& headings, const LogWish& wish) {
  LogColumns out;
  out.first_row = at + 1;
  const CsvRow& row = table.rows[at];
  const std::vector<std::size_t> columns = offered(headings);
  std::optional<std::size_t> time;
  for (std::size_t i = 0; i < headings.size(); ++i) {
    if (headings[i].time && !time) time = i;
    if (headings[i].day && !out.day) out.day = i;
  }
  if (!time) std::swap(time, out.day);
  if (out.day == time) out.day.reset();
  const auto celsius = chosen(row, columns, wish.column);
  if (!celsius) {
    const std::string list = list_of(row, columns);
    out.fault = wish.column.empty()
                    ? fault(table, at, "more than one column of temperatures: " + list, "say which with --column")
                    : fault(table, at, "no column \"" + wish.column + "\" of temperatures", "there is " + list);
    return out;
  }
  out.time = *time;
  out.celsius = *celsius;
  out.number_seconds = wish.number_seconds > 0 ? wish.number_seconds : headings[*time].number_seconds;
  out.scale = headings[*celsius].scale;
  out.heading = row.fields[*celsius].text;
  return out;
}

LogColumns without_heading(const Csv& table, const LogWish& wish) {
  LogColumns out;
  const CsvRow& first = table.rows.front();
  const bool plain = first.fields.size() == 2 && read_moment(first.fields[0].text) && read_degrees(first.fields[1].text);
  if (!plain) {
    out.fault =
        fault(table, 0, "no heading that names a time and a temperature", "begin the file with a line like: time,core °C");
    return out;
  }
  out.celsius = 1;
  out.number_seconds = wish.number_seconds;
  return out;
}

}  // namespace

std::optional<Degrees> read_degrees(std::string_view text) {
  std::string plain(unguarded(base::trimmed(text)));
  Degrees out;
  for (const auto& [end, scale] : {std::pair{"C", Scale::celsius}, std::pair{"c", Scale::celsius},
                                   std::pair{"F", Scale::fahrenheit}, std::pair{"f", Scale::fahrenheit}}) {
    if (!plain.ends_with(end)) continue;
    plain.pop_back();
    out.scale = scale;
    break;
  }
  for (const std::string_view degree : {"°", "º"}) {
    if (plain.ends_with(degree)) plain.resize(plain.size() - degree.size());
  }
  plain = std::string(base::trimmed(plain));
  if (constexpr std::string_view minus = "−"; plain.starts_with(minus)) plain.replace(0, minus.size(), "-");
  if (plain.starts_with('+')) plain.erase(0, 1);
  if (const std::size_t comma = plain.find(','); comma != std::string::npos) plain[comma] = '.';
  const auto [end, bad] = std::from_chars(plain.data(), plain.data() + plain.size(), out.value, std::chars_format::fixed);
  if (plain.empty() || bad != std::errc() || end != plain.data() + plain.size()) return {};
  return out;
}

LogColumns find_columns(const Csv& table, const LogWish& wish) {
  LogColumns none;
  if (table.rows.empty()) {
    none.fault = fault(table, 0, "no rows in it", "a log is a heading (time,core °C) and a line for each reading");
    return none;
  }
  for (std::size_t i = 0; i < std::min(table.rows.size(), most_lines_before); ++i) {
    const CsvRow& row = table.rows[i];
    if (row.fields.size() < 2 || std::any_of(row.fields.begin(), row.fields.end(), is_value)) continue;
    std::vector<Heading> headings;
    for (const CsvField& field : row.fields) headings.push_back(read_heading(field.text));
    const bool timed = std::any_of(headings.begin(), headings.end(), [](const Heading& one) { return one.time || one.day; });
    if (timed && !offered(headings).empty()) return with_heading(table, i, headings, wish);
  }
  return without_heading(table, wish);
}

}  // namespace tamis::record
