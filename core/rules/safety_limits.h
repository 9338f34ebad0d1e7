#ifndef CORE_RULES_SAFETY_LIMITS_H
#define CORE_RULES_SAFETY_LIMITS_H

#include <limits>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "core/fiche/kitchen.h"

namespace tamis::rules {

/// One published limit of food safety. Table: core/rules/safety_limits.inc.
struct SafetyLimit {
  std::string_view name;
  std::string_view set;  ///< whose it is, as kitchen/@limits: "us", "uk", ...
  double celsius;        ///< NaN where it is a time alone
  double seconds;        ///< NaN where it is a temperature alone
  std::string_view source;
};

std::span<const SafetyLimit> safety_limits();

/// What the limits of the kitchen say of it; of the US model code where they say nothing, or the kitchen does not
/// choose. The name must be one of the table's.
const SafetyLimit& safety_limit(const fiche::Kitchen& kitchen, std::string_view name);
/// All lines of it: a limit that is met at one of several temperatures, each with its time. Empty for no name of
/// the table.
std::span<const SafetyLimit> safety_pairs(const fiche::Kitchen& kitchen, std::string_view name);

/// How long food is held at a temperature to meet one of the pairs, in seconds: between two of them by the same
/// factor a degree. Empty below the lowest: no time there is published.
std::optional<double> seconds_needed(std::span<const SafetyLimit> pairs, double celsius);

}  // namespace tamis::rules

#endif
