#include <algorithm>
#include <cmath>

#include "core/cli/json_text.h"
#include "core/cli/predicted.h"

namespace tamis::cli {
namespace {

/// To that many digits that count: what every machine agrees on.
double rounded(double value, int digits) {
  if (value == 0 || !std::isfinite(value)) return value;
  const double scale = std::pow(10, digits - 1 - static_cast<int>(std::floor(std::log10(std::abs(value)))));
  return std::round(value * scale) / scale;
}

std::string seconds_json(const physics::Prediction& answer) {
  std::string out;
  {
    JsonList object(out, '{', '}');
    const auto add = [&object](std::string_view name, const physics::Prediction::Case& one) {
      object.member(name, one.seconds ? json_number(rounded(*one.seconds, 3)) : "null");
    };
    add("low", answer.low);
    add("likely", answer.likely);
    add("high", answer.high);
  }
  return out;
}

std::string range_json(const physics::Range& range) {
  std::string out;
  {
    JsonList object(out, '{', '}');
    object.member("low", json_number(rounded(range.low, 4)));
    object.member("likely", json_number(rounded(range.likely, 4)));
    object.member("high", json_number(rounded(range.high, 4)));
  }
  return out;
}

std::string properties_json(const Predicted& predicted) {
  const Question& q = predicted.question;
  const food::Thermal& thermal = predicted.answer.properties;
  std::string out;
  {
    JsonList object(out, '{', '}');
    object.text("model", q.stirred ? "stirred" : "conduction");
    object.member("density", json_number(rounded(thermal.density, 5)));
    object.member("specific_heat", json_number(rounded(thermal.specific_heat * 1000, 4)));
    object.member("conductivity", json_number(rounded(thermal.conductivity, 4)));
    object.member("freezes_at", json_number(rounded(q.freezes.likely, 3)));
    object.member("medium", range_json(q.exposure.celsius));
    object.member("coefficient", range_json(q.exposure.coefficient));
  }
  return out;
}

std::string curve_json(const std::vector<std::pair<double, double>>& points) {
  constexpr std::size_t most = 60;
  std::string out;
  {
    JsonList list(out, '[', ']');
    const std::size_t step = std::max<std::size_t>(1, (points.size() + most - 1) / most);
    for (std::size_t i = 0; i < points.size(); ++i) {
      if (i % step != 0 && i + 1 != points.size()) continue;
      const auto& [seconds, celsius] = points[i];
      list.item("[" + json_number(rounded(seconds, 3)) + ", " + json_number(std::round(celsius * 10) / 10 + 0.0) + "]");
    }
  }
  return out;
}

}  // namespace

std::string predicted_json(const Predicted& predicted) {
  std::string out;
  {
    JsonList object(out, '{', '}');
    object.member("schema", "1");
    object.text("question", sentence_of(predicted.question));
    object.member("seconds", seconds_json(predicted.answer));
    object.member("properties", properties_json(predicted));
    object.member("curve", curve_json(predicted.answer.likely.points));
    object.member("lethality", kills_json(predicted));
    object.begin("shorter");
    JsonList list(out, '[', ']');
    for (const Predicted::Shorter& one : predicted.shorter) {
      std::string item;
      {
        JsonList entry(item, '{', '}');
        entry.text("what", one.words);
        entry.member("seconds", seconds_json(one.answer));
      }
      list.item(item);
    }
  }
  return out + "\n";
}

}  // namespace tamis::cli
