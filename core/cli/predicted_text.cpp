#include <algorithm>
#include <cmath>

#include "core/base/utf8.h"
#include "core/cli/folded.h"
#include "core/cli/predicted.h"

namespace tamis::cli {
namespace {

using What = Question::What;

std::string range_of(const physics::Range& range, double step) {
  const auto text = [step](double value) {
    const double rounded = std::round(value / step) * step;
    std::string out = std::to_string(std::llround(rounded * 10));
    const bool minus = out.front() == '-';
    if (minus) out.erase(0, 1);
    out.insert(0, out.size() < 2 ? 1 : 0, '0');
    const std::string after(1, out.back());
    out.pop_back();
    return (minus ? "-" : "") + out + (after == "0" ? "" : "." + after);
  };
  const std::string low = text(range.low), high = text(range.high);
  return low == high ? low : low + (range.low < 0 ? " to " : "–") + high;
}

/// Seconds at which the course is at a temperature; NaN when it is not.
double passes(const physics::Prediction::Case& one, double celsius) {
  for (std::size_t i = 1; i < one.points.size(); ++i) {
    const auto& [before, was] = one.points[i - 1];
    const auto& [after, is] = one.points[i];
    if ((was - celsius) * (is - celsius) <= 0 && was != is) return before + (after - before) * (was - celsius) / (was - is);
  }
  return NAN;
}

/// Where it passes through 57 and 21 °C: what food that needs temperature control is held to.
std::string safety(const Predicted& predicted) {
  const Question& q = predicted.question;
  if (q.what != What::cool || q.from < 57 || q.to > 21) return "";
  const double first = passes(predicted.answer.low, 21) - passes(predicted.answer.low, 57);
  const double last = passes(predicted.answer.high, 21) - passes(predicted.answer.high, 57);
  if (std::isnan(first) || std::isnan(last)) return "";
  std::string out = "From 57 to 21 °C: " + time_said(first, true) + " to " + time_said(last) + ". ";
  out += "Food that needs temperature control is usually allowed 2 h for that, and 6 h in all down to 5 °C (US Food Code 2022, 3-501.14). ";
  return out + "Local rules and a licensed person decide.";
}

std::string reckoned(const Predicted& predicted) {
  const Question& q = predicted.question;
  const food::Thermal& thermal = predicted.answer.properties;
  std::string out = "Reckoned " + std::string(q.stirred ? "as a liquid of one temperature all through" : "as set or solid, heat being conducted") + "; ";
  out += std::to_string(std::lround(thermal.density / 10) * 10) + " kg/m³, ";
  out += range_of({thermal.specific_heat, 0, thermal.specific_heat}, 0.1) + " kJ/(kg K)";
  if (!q.stirred) {
    const long hundredths = std::lround(thermal.conductivity * 100);
    out += ", 0." + std::string(hundredths < 10 ? "0" : "") + std::to_string(hundredths) + " W/(m K)";
  }
  if (q.what == What::freeze || q.what == What::thaw) out += ", ice below " + range_of({q.freezes.likely, 0, q.freezes.likely}, 0.1) + " °C";
  out += "; " + q.in + " " + range_of(q.exposure.celsius, 0.5) + " °C, " + range_of(q.exposure.coefficient, 1) + " W/(m² K)";
  const physics::Medium* medium = physics::medium_named(q.medium);
  if (medium != nullptr) out += " (" + std::string(medium->source) + ")";
  return out + ".";
}

std::string notes(const Predicted& predicted) {
  const Question& q = predicted.question;
  std::string out;
  if (q.thin && q.stirred) out += "Thin enough to mix itself. ";
  if (q.what == What::heat && q.medium.starts_with("oven")) out += "Wet surfaces that steam stay below 100 °C: this is for what is covered or has a crust. ";
  return out;
}

}  // namespace

std::string predicted_text(const Predicted& predicted, std::size_t columns, bool ascii) {
  const Question& q = predicted.question;
  const physics::Prediction& answer = predicted.answer;
  std::string out = folded(sentence_of(q), 2, 0) + "\n\n";
  const char* where = q.stirred ? "" : q.place == physics::Place::centre ? " in the centre" : q.place == physics::Place::mean ? " in the mean" : " at the surface";
  out += "  " + times_said(answer) + where + "\n";
  if (!answer.high.seconds)
    out += folded("It levels off at " + range_of(q.exposure.celsius, 0.5) + " °C " + q.in + ", and does not come to " + celsius_said(q.to) + (answer.low.seconds ? " where that is on the wrong side." : "."), 2, 2).insert(0, "  ") + "\n";
  draw::Curve curve = curve_of(predicted);
  curve.title.clear();
  out += "\n" + draw::curve_text(curve, {std::min(columns, page_width), 12, ascii});
  if (!predicted.shorter.empty()) {
    out += "\nWhat would shorten it:\n";
    std::vector<Row> rows;
    for (const Predicted::Shorter& one : predicted.shorter) rows.push_back({one.words, times_said(one.answer)});
    out += two_columns(rows);
  }
  if (const std::string limits = safety(predicted); !limits.empty()) out += "\n" + folded(limits, 0) + "\n";
  if (const auto kills = kills_of(predicted); !kills.empty()) {
    out += "\n";
    for (const PredictedKill& kill : kills) out += folded(kill_said(kill, q.to), 0) + "\n";
    out += "Local rules and a licensed person decide.\n";
  }
  return out + "\n" + folded(notes(predicted) + reckoned(predicted), 0) + "\n";
}

}  // namespace tamis::cli
