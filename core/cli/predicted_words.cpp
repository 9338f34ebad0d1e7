#include <algorithm>
#include <array>
#include <cmath>

#include "core/cli/predicted.h"

namespace tamis::cli {
namespace {

using Lies = Question::Lies;

std::string decimal(double value, int digits) {
  const double scale = std::pow(10, digits);
  const long long parts = std::llround(std::abs(value) * scale);
  std::string out = value < 0 && parts > 0 ? "-" : "";
  out += std::to_string(parts / std::llround(scale));
  long long rest = parts % std::llround(scale);
  if (rest == 0) return out;
  std::string after = std::to_string(rest);
  after.insert(0, static_cast<std::size_t>(digits) - after.size(), '0');
  after.erase(after.find_last_not_of('0') + 1);
  return out + "." + after;
}

/// The step that a time of that length is told to, s.
double step_of(double seconds) {
  struct Told {
    double below, step;
  };
  static constexpr std::array told{Told{120, 5}, Told{20 * 60, 60}, Told{2 * 3600, 300}, Told{10 * 3600, 900}, Told{48 * 3600, 3600}};
  for (const Told& one : told)
    if (seconds < one.below) return one.step;
  return 43200;
}

std::string written(double seconds) {
  const auto whole = std::llround(seconds);
  if (whole < 120) return std::to_string(whole) + " s";
  const long long minutes = whole / 60;
  if (minutes < 100) return std::to_string(minutes) + " min";
  if (minutes < 48 * 60) return std::to_string(minutes / 60) + " h" + (minutes % 60 == 0 ? "" : " " + std::to_string(minutes % 60) + " min");
  return decimal(seconds / 86400, 1) + " days";
}

std::string metres(double value) { return decimal(value * 100, 1) + " cm"; }

}  // namespace

std::string celsius_said(double celsius) { return decimal(celsius, 1) + " °C"; }

std::string time_said(double seconds, bool down) {
  const double step = step_of(seconds);
  const double steps = seconds / step;
  // A hair beyond a step is that step on every machine.
  return written(step * (down ? std::floor(steps + 1e-6) : std::ceil(steps - 1e-6)));
}

std::string times_said(const physics::Prediction& answer) {
  const auto likely = [&answer] {
    const double seconds = *answer.likely.seconds, step = step_of(seconds);
    return written(step * std::max(1.0, std::round(seconds / step)));
  };
  if (!answer.low.seconds) return "never";
  const std::string low = time_said(*answer.low.seconds, true);
  if (!answer.likely.seconds) return "from " + low + " on, and it is likely never to";
  if (!answer.high.seconds) return "from " + low + " on, likely " + likely() + ", and it may never";
  const std::string high = time_said(*answer.high.seconds);
  return low == high ? low : low + " to " + high + ", likely " + likely();
}

std::string sentence_of(const Question& q) {
  std::string out = q.name;
  const bool litres = q.volume > 0 && (q.lies == Lies::slab || q.lies == Lies::cylinder);
  if (litres) out = decimal(q.volume * 1000, q.volume < 0.01 ? 2 : 1) + " l of " + q.name;
  const auto add = [&out](double side, const char* word) {
    if (side > 0) out += ", " + metres(side) + " " + word;
  };
  if (q.lies == Lies::cylinder || q.lies == Lies::sphere) add(q.diameter, "across");
  if (q.lies == Lies::brick) {
    out += ", " + metres(q.length) + " × " + metres(q.width);
    add(q.depth, "thick");
  } else {
    add(q.depth, "deep");
  }
  if (q.lies == Lies::sphere) out += " (a ball)";
  if (q.lies == Lies::cylinder && q.depth <= 0) out += " (a long roll)";
  return out + ", from " + celsius_said(q.from) + " to " + celsius_said(q.to) + " " + q.in;
}

}  // namespace tamis::cli
