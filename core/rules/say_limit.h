#ifndef CORE_RULES_SAY_LIMIT_H
#define CORE_RULES_SAY_LIMIT_H

#include <string>

#include "core/rules/rule.h"
#include "core/rules/safety_limits.h"

namespace tamis::rules {

/// Says that a published limit is not met: the message with the limit's source behind it, the advice with who
/// decides.
base::Finding& say_limit(Check& check, base::Span where, std::string message, const SafetyLimit& limit,
                         std::string advice);

/// "4 h", "7 days".
std::string time_of(const SafetyLimit& limit);
/// A stated temperature as the author has it, in °C too where it is not: "48 °F (9 °C)".
std::string said_heat(const fiche::Statement& heat);

}  // namespace tamis::rules

#endif
