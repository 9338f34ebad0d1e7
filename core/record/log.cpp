#include "core/record/log.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "core/record/log_columns.h"
#include "core/record/log_faults.h"
#include "core/record/log_time.h"

namespace tamis::record {
namespace {

constexpr double day_seconds = 86400;

std::string name_of(Scale scale) { return scale == Scale::fahrenheit ? "°F" : "°C"; }

class Reader {
 public:
  Reader(const Csv& table, const LogWish& wish, Log& out) : table_(table), wish_(wish), log_(out), faults_(out.faults) {}

  void read() {
    columns_ = find_columns(table_, wish_);
    if (columns_.fault) {
      log_.faults.push_back(*columns_.fault);
      return;
    }
    log_.column = columns_.heading;
    if (!settle_scale()) return;
    for (std::size_t i = columns_.first_row; i < table_.rows.size(); ++i) row(table_.rows[i]);
    if (unit_missing_) return;
    if (log_.readings.empty()) {
      faults_.say("log-unreadable", table_.rows.back().where, "no reading in it that can be used",
                  "a log has a time and a temperature in each line");
    } else {
      part_at_spikes(log_, faults_);
      part_at_gaps(log_, faults_);
      log_.usable = !log_.readings.empty() && !reads_like_another_scale();
    }
    faults_.finish();
  }

 private:
  bool settle_scale() {
    const Scale said = wish_.scale;
    if (said != Scale::unsaid && columns_.scale != Scale::unsaid && said != columns_.scale) {
      faults_.say("log-wrong-scale", table_.rows[columns_.first_row - 1].where,
                  "the heading says " + name_of(columns_.scale) + ", and --scale says " + name_of(said),
                  "see which it is: nothing is judged");
      return false;
    }
    log_.scale = said != Scale::unsaid ? said : columns_.scale != Scale::unsaid ? columns_.scale : Scale::celsius;
    return true;
  }

  void row(const CsvRow& row) {
    ++log_.rows;
    const auto degrees = read_temperature(row);
    const auto seconds = degrees ? read_time(row) : std::nullopt;
    if (!seconds) {
      parted_ = true;
      return;
    }
    log_.readings.push_back({*seconds, *degrees, row.fields[columns_.celsius].where, parted_ && !log_.readings.empty()});
    parted_ = false;
  }

  std::optional<double> read_temperature(const CsvRow& row) {
    if (columns_.celsius >= row.fields.size() || row.fields[columns_.celsius].text.empty()) {
      faults_.say("log-unreadable", row.where, "a row without a temperature",
                  "the row is left out, and no verdict goes across it");
      return {};
    }
    const CsvField& field = row.fields[columns_.celsius];
    const auto degrees = read_degrees(field.text);
    if (!degrees) {
      faults_.say("log-unreadable", field.where, "\"" + field.text + "\" is no temperature",
                  "the row is left out, and no verdict goes across it");
      return {};
    }
    const Scale own = degrees->scale;
    const bool sure = wish_.scale != Scale::unsaid || columns_.scale != Scale::unsaid;
    if (own != Scale::unsaid && !sure && log_.readings.empty() && log_.rows == 1) log_.scale = own;
    if (own != Scale::unsaid && own != log_.scale) {
      faults_.say("log-wrong-scale", field.where, "\"" + field.text + "\" among readings in " + name_of(log_.scale),
                  "one log, one scale: the row is left out, and no verdict goes across it");
      return {};
    }
    return celsius_of(degrees->value, log_.scale);
  }

  /// Seconds in the order of the log; nothing, and it is said, when the time cannot be read or does not go on.
  std::optional<double> read_time(const CsvRow& row) {
    const CsvField none;
    const CsvField& field = columns_.time < row.fields.size() ? row.fields[columns_.time] : none;
    const std::string day = columns_.day && *columns_.day < row.fields.size() ? row.fields[*columns_.day].text + " " : "";
    const auto moment = read_moment(day + field.text);
    if (!moment || moment->kind == Moment::Kind::date) {
      faults_.say("log-unreadable", field.text.empty() ? row.where : field.where,
                  field.text.empty() ? "a row without a time" : "\"" + day + field.text + "\" is no time",
                  "write 10:42, 2026-11-03 10:42 or a number under a heading like \"time (min)\"");
      return {};
    }
    if (moment->kind == Moment::Kind::number && columns_.number_seconds <= 0) {
      if (!unit_missing_) {
        faults_.say("log-unreadable", field.where, "\"" + field.text + "\": seconds or minutes? The heading does not say",
                    "write \"time (s)\" or \"time (min)\" in the heading, or say --time s, --time min");
      }
      unit_missing_ = true;
      return {};
    }
    return in_order(*moment, field);
  }

  std::optional<double> in_order(const Moment& moment, const CsvField& field) {
    const bool numbers = moment.kind == Moment::Kind::number;
    const bool dated = moment.kind == Moment::Kind::date_and_clock;
    if (!kind_) {
      kind_ = moment.kind;
      log_.by_clock = !numbers;
      first_day_ = moment.day;
      if (dated) log_.day = day_text(moment.day);
    }
    if (*kind_ != moment.kind) {
      faults_.say("log-unreadable", field.where, "\"" + field.text + "\" is another kind of time than the rows before it",
                  "the row is left out");
      return {};
    }
    double seconds = numbers ? moment.number * columns_.number_seconds : moment.clock_seconds;
    if (dated) seconds += static_cast<double>(moment.day - first_day_) * day_seconds;
    const bool clock_alone = moment.kind == Moment::Kind::clock;
    if (clock_alone) {
      seconds += static_cast<double>(nights_) * day_seconds;
      if (last_ && seconds < *last_ - day_seconds / 2) {  // past midnight
        ++nights_;
        seconds += day_seconds;
      }
    }
    if (last_ && seconds <= *last_) {
      const std::string what = seconds == *last_ ? " comes twice" : " comes after " + moment_text(log_, *last_);
      faults_.say("log-out-of-order", field.where, "\"" + field.text + "\"" + what,
                  "readings come in the order they were taken; the row is left out, and no verdict goes across it");
      return {};
    }
    last_ = seconds;
    return seconds;
  }

  /// Hotter in °C than the food ever is, and likely in °F; colder as °F than the food ever is, and likely in °C. Of what is
  /// left when the probe's own leaps are out.
  bool reads_like_another_scale() {
    if (wish_.scale != Scale::unsaid) return false;
    const auto by_heat = [](const Reading& a, const Reading& b) { return a.celsius < b.celsius; };
    if (log_.readings.empty()) return false;
    const auto [least, most] = std::minmax_element(log_.readings.begin(), log_.readings.end(), by_heat);
    const Reading& hottest = *most;
    const Reading& coldest = *least;
    if (log_.scale == Scale::celsius && hottest.celsius > wish_.hottest && celsius_of(hottest.celsius, Scale::fahrenheit) <= wish_.hottest) {
      faults_.say("log-wrong-scale", hottest.where,
                  celsius_text(hottest.celsius) + " is more than the food of this fiche ever is; in °F it would be " +
                      celsius_text(celsius_of(hottest.celsius, Scale::fahrenheit)),
                  "see what the logger writes and say --scale f or --scale c: nothing is judged");
      return true;
    }
    const double as_celsius = coldest.celsius * 1.8 + 32;
    if (log_.scale == Scale::fahrenheit && coldest.celsius < wish_.coldest && as_celsius >= wish_.coldest) {
      faults_.say("log-wrong-scale", coldest.where,
                  "in °F this is " + celsius_text(coldest.celsius) + ", less than the food of this fiche ever is; is it " +
                      celsius_text(as_celsius) + "?",
                  "see what the logger writes and say --scale f or --scale c: nothing is judged");
      return true;
    }
    return false;
  }

  const Csv& table_;
  const LogWish& wish_;
  Log& log_;
  LogFaults faults_;
  LogColumns columns_;
  bool parted_ = false, unit_missing_ = false;
  std::optional<Moment::Kind> kind_;
  std::optional<double> last_;
  long first_day_ = 0;
  int nights_ = 0;
};

std::string two(long number) { return (number < 10 ? "0" : "") + std::to_string(number); }

}  // namespace

Log read_log(const Csv& table, const LogWish& wish) {
  Log out;
  if (table.rows.empty() && !table.faults.empty()) {
    out.faults = table.faults;
    return out;
  }
  Reader(table, wish, out).read();
  out.faults.insert(out.faults.end(), table.faults.begin(), table.faults.end());
  base::sort_by_place(out.faults);
  return out;
}

std::string moment_text(const Log& log, double seconds) {
  if (!log.by_clock) return span_text(seconds);
  const auto whole = static_cast<long>(std::floor(seconds));
  const long day = whole / 86400;
  const long of_day = whole % 86400;
  std::string out = two(of_day / 3600) + ":" + two(of_day / 60 % 60);
  if (of_day % 60 != 0) out += ":" + two(of_day % 60);
  return out + (day == 0 ? "" : day == 1 ? " next day" : " on day " + std::to_string(day + 1));
}

std::string span_text(double seconds) {
  const auto whole = static_cast<long>(std::floor(seconds + 1e-6));
  if (whole < 60) return std::to_string(whole) + " s";
  const long hours = whole / 3600;
  const long minutes = whole / 60 % 60;
  std::string out = hours > 0 ? std::to_string(hours) + " h" : "";
  if (minutes > 0 || hours == 0) out += (out.empty() ? "" : " ") + std::to_string(minutes) + " min";
  if (whole < 600 && whole % 60 != 0) out += " " + std::to_string(whole % 60) + " s";
  return out;
}

namespace {

std::string tenths_text(double value) {
  const auto tenths = std::llround(value * 10);
  std::string out = tenths < 0 ? "−" : "";
  out += std::to_string(std::llabs(tenths) / 10);
  if (tenths % 10 != 0) out += "." + std::to_string(std::llabs(tenths) % 10);
  return out;
}

}  // namespace

std::string celsius_text(double celsius) { return tenths_text(celsius) + " °C"; }

std::string degrees_text(Scale scale, double celsius) {
  return scale == Scale::fahrenheit ? tenths_text(celsius * 1.8 + 32) + " °F" : celsius_text(celsius);
}

Scale scale_of(std::string_view words) {
  return words.find("°F") != std::string_view::npos || words.find("° F") != std::string_view::npos ? Scale::fahrenheit
                                                                                                   : Scale::celsius;
}

}  // namespace tamis::record
