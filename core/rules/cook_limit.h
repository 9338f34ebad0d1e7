#ifndef CORE_RULES_COOK_LIMIT_H
#define CORE_RULES_COOK_LIMIT_H

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "core/rules/rule.h"
#include "core/rules/safety_limits.h"

namespace tamis::rules {

/// Whether a food of the table is of a bird, by its id.
bool is_poultry(std::string_view id);

/// What is published for cooking what a step works on: the strictest of its raw meats.
struct CookLimit {
  std::string_view food;  ///< "poultry", "minced meat"
  std::span<const SafetyLimit> pairs;
};
/// Empty where nothing in it is raw poultry or raw minced meat. Whole cuts of beef, lamb and pork, fish and
/// shellfish are cooked to order as guests wish.
std::optional<CookLimit> cook_limit_of(const Check& check, int step);

/// Whether a temperature, held that long (s), meets one of the pairs.
bool meets(std::span<const SafetyLimit> pairs, double celsius, double seconds);
/// "28 min at 60 °C, or 74 °C at once": what would meet them; the first only where it is published.
std::string asked(std::span<const SafetyLimit> pairs, double celsius);

/// Whether a caution says that the food is not cooked through, or who is not to eat it.
bool says_undercooked(std::string_view lower_text);

}  // namespace tamis::rules

#endif
