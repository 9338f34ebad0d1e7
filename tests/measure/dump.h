#ifndef TESTS_MEASURE_DUMP_H
#define TESTS_MEASURE_DUMP_H

#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/measure/amount.h"
#include "core/measure/read.h"

namespace tamis::tests {

inline std::string dump(const std::vector<measure::Quantity>& parts) {
  std::string out;
  for (const auto& part : parts) {
    if (!out.empty()) out += " + ";
    out += part.value.text() + " " + std::string(part.unit->id);
  }
  return out;
}

/// An amount in one line for tests: "1 lb + 2 oz", "82 degc .. 84 degc", ">= 12 h", "<= 38 degc", "~ 60 min",
/// "word to-taste".
inline std::string dump(const measure::Amount& amount) {
  using Form = measure::Amount::Form;
  const std::string about = amount.about ? "~ " : "";
  switch (amount.form) {
    case Form::words: return "word " + amount.words;
    case Form::at_least: return about + ">= " + dump(amount.low);
    case Form::at_most: return about + "<= " + dump(amount.high);
    case Form::range: return about + dump(amount.low) + " .. " + dump(amount.high);
    case Form::exact: return about + dump(amount.low);
  }
  return {};
}

/// The amount, or the rule that refused it.
inline std::string dump(const base::Result<measure::Amount>& read) { return read ? dump(*read) : read.fault().rule; }

inline measure::Reading reading(std::string_view language, measure::System system = measure::System::none,
                                char decimal = 0) {
  return {std::string(language), system, decimal};
}

}  // namespace tamis::tests

#endif
