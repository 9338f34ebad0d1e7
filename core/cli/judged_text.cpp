#include <algorithm>
#include <cmath>

#include "core/cli/folded.h"
#include "core/cli/output.h"
#include "core/cli/record_of.h"
#include "core/cli/report.h"

namespace tamis::cli {
namespace {

using record::Outcome;

constexpr double many_logs = 20;  // beyond it a figure says no more

std::string painted(std::string_view code, const std::string& text, bool colour) {
  return colour ? "\033[" + std::string(code) + "m" + text + "\033[0m" : text;
}

std::string tenths(double value) {
  const std::string out = record::celsius_text(value);
  return out.substr(0, out.find(' '));
}

/// "log.csv: 96 readings in °C, column "core", 10:02 to 12:05".
std::string log_line(const JudgedLog& judged) {
  const record::Log& log = judged.log;
  std::string out = harmless(judged.source->path()) + ": " + count_of(log.readings.size(), "reading");
  if (log.rows > log.readings.size()) out += " of " + count_of(log.rows, "row");
  out += log.scale == record::Scale::fahrenheit ? " in °F" : " in °C";
  if (!log.column.empty()) out += ", \"" + harmless(log.column) + "\"";
  if (log.readings.empty()) return out;
  if (!log.day.empty()) out += ", " + log.day;
  if (log.by_clock) {
    out += ", " + record::moment_text(log, log.readings.front().seconds) + " to " +
           record::moment_text(log, log.readings.back().seconds);
  } else {
    out += " over " + record::span_text(log.readings.back().seconds - log.readings.front().seconds);
  }
  const auto [coldest, hottest] = std::minmax_element(log.readings.begin(), log.readings.end(),
                                                      [](const auto& a, const auto& b) { return a.celsius < b.celsius; });
  return out + ", " + record::degrees_text(log.scale, coldest->celsius) + " to " +
         record::degrees_text(log.scale, hottest->celsius);
}

std::string verdict_word(Outcome outcome, bool colour) {
  const std::string word(record::outcome_name(outcome));
  return painted(outcome == Outcome::met      ? "32"
                 : outcome == Outcome::missed ? "1;31"
                                              : "1;33",
                 word, colour) +
         std::string(11 - word.size(), ' ');
}

std::string point_text(const base::Source& source, const record::Log& log, std::size_t all_points, const JudgedPoint& one,
                       bool colour) {
  const record::ControlPoint& point = one.point;
  std::string out = "\n" + painted("1", "Control point " + std::to_string(point.number), colour);
  if (all_points > 1) out += " of " + std::to_string(all_points);
  out += harmless((point.where.empty() ? "" : ", " + point.where) + (point.hazard.empty() ? "" : ": " + point.hazard)) + "\n";
  out += "  " + folded(harmless(point.limit), 2) + "\n";
  std::string word = "  " + verdict_word(one.verdict.outcome, colour);
  for (const std::string& line : one.verdict.says) {
    out += word + folded(harmless(line), 13) + "\n";
    word = std::string(13, ' ');
  }
  if (!one.verdict.where.empty()) {
    const base::Place place = source.place(one.verdict.where.begin);
    out += std::string(13, ' ') + "(" + harmless(source.path()) + ":" + std::to_string(place.line) + ":" +
           std::to_string(place.column) + ")\n";
  }
  if (one.verdict.outcome == Outcome::missed && !point.action.empty())
    out += std::string(13, ' ') + "→ " + folded(harmless(point.action), 15) + "\n";
  for (const record::Kill& kill : one.kills) out += std::string(13, ' ') + folded(kill_text(kill, log), 15, 13) + "\n";
  return out;
}

/// "  supplier lots    7 of 7 written".
std::string fact(const std::string& name, const std::string& says) {
  return "  " + name + std::string(17 - name.size(), ' ') + folded(harmless(says), 19) + "\n";
}

}  // namespace

std::string kill_text(const record::Kill& kill, const record::Log& log) {
  std::string out = std::string(kill.of->organism) + " " + std::string(kill.of->food) + ": ";
  out += kill.logs > many_logs ? "more than " + tenths(many_logs) : tenths(kill.logs);
  out += " log10 reductions";
  if (std::isnan(kill.of->asked)) return out;
  out += "; " + tenths(kill.of->asked) + " asked (" + std::string(kill.of->asked_by) + ")";
  if (std::isnan(kill.reached)) return out + ", not reached";
  return out + ", reached " + (log.by_clock ? "at " : "after ") + record::moment_text(log, std::ceil(kill.reached / 60) * 60);
}

std::string judged_text(const JudgedLog& judged, bool colour) {
  std::string out = painted("1", harmless(judged.fiche.title), colour) + "\n";
  out += folded(log_line(judged), 2, 0) + "\n";
  for (const JudgedPoint& point : judged.points)
    out += point_text(*judged.source, judged.log, judged.all_points, point, colour);
  return out + "\n" + std::string(who_decides) + "\n";
}

std::string filled_text(const JudgedRecord& judged, bool colour) {
  const record::FilledRecord& filled = judged.record;
  const auto or_empty = [](const std::string& text) { return text.empty() ? std::string("left empty") : text; };
  std::string out =
      painted("1", harmless(judged.fiche.title), colour) + "\n" + harmless(judged.source->path()) + ": batch record\n";
  out += fact("date", or_empty(filled.date)) + fact("batch", or_empty(filled.batch)) + fact("size", or_empty(filled.size)) +
         fact("made by", or_empty(filled.made_by));
  out += fact("supplier lots", std::to_string(filled.lots) + " of " + std::to_string(filled.lots_asked) + " written");
  const std::string within = filled.probe_within == Outcome::met      ? ": near enough"
                             : filled.probe_within == Outcome::missed ? ": farther off than it may be"
                                                                      : "";
  out += fact("probe", filled.probe.empty() ? "not checked" : filled.probe + within);
  for (std::size_t i = 0; i < filled.points.size(); ++i)
    out += point_text(*judged.source, filled.points[i].log, judged.points.size(),
                      {judged.points[i], filled.points[i].verdict, {}}, colour);
  out += "\n" + fact("verified by", filled.verifier.empty() ? "nobody" : filled.verifier);
  return out + "\n" + std::string(who_decides) + "\n";
}

}  // namespace tamis::cli
