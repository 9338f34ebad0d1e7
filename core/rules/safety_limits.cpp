#include "core/rules/safety_limits.h"

#include <algorithm>
#include <cmath>

namespace tamis::rules {
namespace {

constexpr double no_figure = std::numeric_limits<double>::quiet_NaN();

constexpr SafetyLimit all[] = {
#define LIMIT(name, set, celsius, seconds, source) SafetyLimit{#name, #set, celsius, seconds, source},
#include "core/rules/safety_limits.inc"
};

/// The lines of one name and set stand one behind the other.
std::span<const SafetyLimit> lines_of(std::string_view name, std::string_view set) {
  const auto is = [&](const SafetyLimit& line) { return line.name == name && line.set == set; };
  const auto* first = std::find_if(std::begin(all), std::end(all), is);
  return {first, std::find_if_not(first, std::end(all), is)};
}

}  // namespace

std::span<const SafetyLimit> safety_limits() { return all; }

std::span<const SafetyLimit> safety_pairs(const fiche::Kitchen& kitchen, std::string_view name) {
  const auto own = lines_of(name, kitchen.limits);
  return own.empty() ? lines_of(name, "us") : own;
}

const SafetyLimit& safety_limit(const fiche::Kitchen& kitchen, std::string_view name) {
  return safety_pairs(kitchen, name).front();
}

std::optional<double> seconds_needed(std::span<const SafetyLimit> pairs, double celsius) {
  if (pairs.empty() || celsius < pairs.front().celsius) return std::nullopt;
  const auto above = std::find_if(pairs.begin(), pairs.end(),
                                  [celsius](const SafetyLimit& pair) { return pair.celsius > celsius; });
  const SafetyLimit& below = *(above - 1);
  if (above == pairs.end() || above->seconds < 1) return below.seconds;
  const double share = (celsius - below.celsius) / (above->celsius - below.celsius);
  return below.seconds * std::pow(above->seconds / below.seconds, share);
}

}  // namespace tamis::rules
