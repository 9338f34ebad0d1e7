#include <cmath>

#include "core/cli/predicted.h"
#include "core/measure/rough_time.h"

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

std::string metres(double value) { return decimal(value * 100, 1) + " cm"; }

}  // namespace

std::string celsius_said(double celsius) { return decimal(celsius, 1) + " °C"; }

std::string time_said(double seconds, bool down) {
  return measure::rough_time(seconds, down ? measure::Toward::down : measure::Toward::up);
}

std::string times_said(const physics::Prediction& answer) {
  const auto likely = [&answer] { return measure::rough_time(*answer.likely.seconds); };
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
