#include "core/rules/figure_text.h"

#include <array>
#include <cmath>
#include <cstdio>

namespace tamis::rules {
namespace {

using measure::Kind;

/// Three digits that count, without zeros behind the point.
std::string digits(double value) {
  const double size = std::abs(value);
  const int places = size >= 100 ? 0 : size >= 10 ? 1 : size >= 1 ? 2 : 3;
  std::array<char, 64> buffer{};
  std::snprintf(buffer.data(), buffer.size(), "%.*f", places, value);
  std::string out = buffer.data();
  if (out.find('.') != std::string::npos) {
    out.erase(out.find_last_not_of('0') + 1);
    if (out.back() == '.') out.pop_back();
  }
  return out;
}

/// Tenths below ten.
std::string of_hundred(double value) { return digits(std::abs(value) < 10 ? std::round(10 * value) / 10 : std::round(value)); }

std::string time_text(double seconds) {
  if (seconds < 100) return digits(seconds) + " s";
  if (seconds < 100 * 60) return digits(seconds / 60) + " min";
  if (seconds < 100 * 3600) return digits(seconds / 3600) + " h";
  return digits(seconds / 86400) + " days";
}

}  // namespace

std::string figure_text(double value, Kind kind) {
  switch (kind) {
    case Kind::mass: return std::abs(value) < 1000 ? digits(value) + " g" : digits(value / 1000) + " kg";
    case Kind::volume: return std::abs(value) < 1000 ? digits(value) + " ml" : digits(value / 1000) + " l";
    case Kind::length:
      if (std::abs(value) < 10) return digits(value) + " mm";
      return std::abs(value) < 1000 ? digits(value / 10) + " cm" : digits(value / 1000) + " m";
    case Kind::time: return time_text(value);
    case Kind::temperature:
    case Kind::temperature_difference:
      return digits(std::abs(value) >= 100 ? value : std::round(10 * value) / 10) + " °C";
    case Kind::count: return digits(value);
  }
  return digits(value);
}

std::string times_text(double times) {
  if (times >= 1.5) return digits(times >= 10 ? std::round(times) : std::round(10 * times) / 10) + " times";
  return digits(std::round(100 * (times - 1))) + " %";
}

std::string percent_text(double low, double high) {
  const std::string from = of_hundred(low), to = of_hundred(high);
  return (from == to ? from : from + "–" + to) + " %";
}

}  // namespace tamis::rules
