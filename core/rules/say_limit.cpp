#include "core/rules/say_limit.h"

#include <utility>

#include "core/rules/gate_steps.h"
#include "core/rules/stated_heat.h"
#include "core/rules/time_limits.h"

namespace tamis::rules {

base::Finding& say_limit(Check& check, base::Span where, std::string message, const SafetyLimit& limit,
                         std::string advice) {
  const std::string_view source = limit.source;
  message += " (" + std::string(source.substr(0, source.find(", from memory"))) + ")";
  base::Finding& finding =
      check.say(where, std::move(message), std::move(advice) + "; local rules and licensed persons decide");
  finding.source = source;
  return finding;
}

std::string time_of(const SafetyLimit& limit) {
  return time_words(static_cast<flow::TimeNetwork::Seconds>(limit.seconds));
}

std::string said_heat(const fiche::Statement& heat) {
  const auto& amount = *heat.amount;
  const auto& figure = amount.low.empty() ? amount.high : amount.low;
  const auto low = low_of(heat), high = high_of(heat);
  if (figure.empty() || figure.front().unit->id == "degc") return heat.text;
  const std::string lower = low ? degrees(*low) : "", upper = high ? degrees(*high) : "";
  if (lower.empty() || upper.empty() || lower == upper)
    return heat.text + " (" + (lower.empty() ? upper : lower) + ")";
  return heat.text + " (" + lower.substr(0, lower.find(' ')) + "–" + upper + ")";
}

}  // namespace tamis::rules
