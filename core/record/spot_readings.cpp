#include "core/record/spot_readings.h"

#include <algorithm>

#include "core/base/utf8.h"
#include "core/record/blank.h"
#include "core/record/log_columns.h"
#include "core/record/log_time.h"

namespace tamis::record {
namespace {

constexpr double day_seconds = 86400;
constexpr double late = 1.5;  // times what is asked between two checks

base::Span place(const CsvRow& row, std::size_t column) {
  return column < row.fields.size() ? row.fields[column].where : row.where;
}

/// Hotter or colder than the food of such a limit ever is, so that the other scale is likely meant.
bool is_beyond(const ControlLimit& asks, double celsius) {
  double hottest = 105, coldest = -8;
  for (const Stage& stage : asks.stages) {
    for (const auto& limit : {stage.from, stage.least, stage.most}) {
      if (limit) hottest = std::max(hottest, *limit + 10);
      if (limit && *limit < 0) coldest = -60;
    }
  }
  return celsius > hottest || celsius < coldest;
}

}  // namespace

void SpotReadings::say(std::string_view rule, base::Span where, std::string message, std::string advice) {
  base::Finding finding;
  finding.rule = rule;
  finding.where = where;
  finding.message = std::move(message);
  finding.advice = std::move(advice);
  faults_.push_back(std::move(finding));
}

void SpotReadings::add(const CsvRow& row) {
  any_ = true;
  if (cell(row, c_initials).empty())
    say("record-incomplete", row.where, "a reading without initials", "whoever read it signs it");
  if (point_.asks.way == ControlLimit::Way::none) {
    by_hand_ = true;
    const std::string word = base::lower(cell(row, c_found));
    met_by_hand_ = word == "yes" || word == "met" || word == "ok" || word == "x";
    return;
  }
  const auto degrees = read_degrees(cell(row, c_found));
  if (!degrees)
    return say("log-unreadable", place(row, c_found), "\"" + cell(row, c_found) + "\" is no temperature",
               "write the figure that was read: 63.2");
  const Scale scale = degrees->scale != Scale::unsaid ? degrees->scale : scale_of(cell(row, c_asked));
  Spot spot;
  spot.reading.celsius = celsius_of(degrees->value, scale);
  spot.reading.where = place(row, c_found);
  if (degrees->scale == Scale::unsaid && is_beyond(point_.asks, spot.reading.celsius)) {
    return say(
        "log-wrong-scale", spot.reading.where,
        "\"" + cell(row, c_found) + "\" would be " + degrees_text(scale, spot.reading.celsius) + ", which this food never is",
        std::string("write the scale behind it: ") + (scale == Scale::fahrenheit ? "4 °C" : "147 °F"));
  }
  if (scale == Scale::fahrenheit) scale_ = scale;
  const auto seconds = time_of(row);
  spot.timed = seconds.has_value();
  spot.reading.seconds = seconds.value_or(0);
  spot.acted = !cell(row, c_action).empty();
  spots_.push_back(spot);
}

std::optional<double> SpotReadings::time_of(const CsvRow& row) {
  const std::string text = cell(row, c_time);
  if (text.empty()) {
    say("record-incomplete", row.where, "a reading without its time", "write when it was read: 10:42");
    return {};
  }
  const auto moment = read_moment(text);
  if (!moment || moment->kind == Moment::Kind::date || moment->kind == Moment::Kind::number) {
    say("log-unreadable", place(row, c_time), "\"" + text + "\" is no time", "write 10:42");
    return {};
  }
  double seconds = moment->clock_seconds + nights_ * day_seconds;
  if (last_ && seconds < *last_ - day_seconds / 2) {  // past midnight
    ++nights_;
    seconds += day_seconds;
  }
  if (last_ && seconds < *last_) {
    say("log-out-of-order", place(row, c_time), "\"" + text + "\" comes before the reading above it",
        "see which of the two times is right");
    return {};
  }
  last_ = seconds;
  return seconds;
}

std::string SpotReadings::what_to_do() const {
  return point_.action.empty() ? "write what was done with the food" : "the fiche asks: " + point_.action;
}

Verdict SpotReadings::judge(Log& log) {
  Verdict out;
  if (by_hand_) {
    out.outcome = met_by_hand_ ? Outcome::met : Outcome::missed;
    out.says.emplace_back(met_by_hand_ ? "signed as met" : "not signed as met");
    return out;
  }
  log.by_clock = true;
  log.by_hand = true;
  log.scale = scale_;
  log.usable = !spots_.empty();
  for (const Spot& spot : spots_) log.readings.push_back(spot.reading);
  if (spots_.empty()) {
    out.says.emplace_back("no reading to judge by");
    return out;
  }
  const Stage& first = point_.asks.stages.front();
  const bool each = point_.asks.way == ControlLimit::Way::reach && point_.asks.stages.size() == 1 && !first.within &&
                    !first.hold && !first.from;
  if (each) return judge_each(log);
  for (const Spot& spot : spots_) {
    if (!spot.timed) {
      out.says.emplace_back("how long it took is not shown: a reading is without its time");
      return out;
    }
  }
  if (point_.asks.way == ControlLimit::Way::stay) look_for_pauses(log);
  out = record::judge(point_.asks, log);
  const bool acted = std::any_of(spots_.begin(), spots_.end(), [](const Spot& spot) { return spot.acted; });
  if (out.outcome == Outcome::missed && !acted)
    say("record-incomplete", out.where.empty() ? spots_.back().reading.where : out.where,
        "the limit was missed, and no action is written", what_to_do());
  return out;
}

Verdict SpotReadings::judge_each(const Log& log) {
  Verdict out;
  out.outcome = Outcome::met;
  const Stage& stage = point_.asks.stages.front();
  for (std::size_t i = 0; i < spots_.size(); ++i) {
    const Spot& spot = spots_[i];
    std::string line =
        degrees_text(log.scale, spot.reading.celsius) + (spot.timed ? " at " + moment_text(log, spot.reading.seconds) : "");
    if (stage.is_shown_by(spot.reading.celsius)) {
      out.says.push_back(line + ": " + stage.text + " reached");
      continue;
    }
    const bool later = i + 1 < spots_.size() && stage.is_shown_by(spots_.back().reading.celsius);
    line += ", not " + stage.text;
    if (spot.acted && later) {
      out.says.push_back(line + "; acted on");
      continue;
    }
    out.says.push_back(line);
    if (out.outcome != Outcome::missed) out.where = spot.reading.where;
    out.outcome = Outcome::missed;
    if (!spot.acted) say("record-incomplete", spot.reading.where, line + ", and no action is written", what_to_do());
  }
  return out;
}

void SpotReadings::look_for_pauses(const Log& log) {
  if (!point_.asks.each) return;
  for (std::size_t i = 1; i < log.readings.size(); ++i) {
    const double pause = log.readings[i].seconds - log.readings[i - 1].seconds;
    if (pause <= late * *point_.asks.each) continue;
    say("record-incomplete", log.readings[i].where,
        "no reading for " + span_text(pause) + ", from " + moment_text(log, log.readings[i - 1].seconds) + " to " +
            moment_text(log, log.readings[i].seconds),
        "it is asked for " + point_.often);
  }
}

}  // namespace tamis::record
