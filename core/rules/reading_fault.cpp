#include "core/rules/reading_fault.h"

namespace tamis::rules {

base::Finding& say_reading_fault(Check& check, const fiche::Statement& statement) {
  const base::Finding& fault = *statement.fault;
  base::Finding& made = check.say(fault.where, fault.message, fault.advice);
  if (!fault.source.empty()) made.source = fault.source;
  return made;
}

void say_reading_faults(Check& check, std::string_view rule) {
  for_each_reading_fault(check, rule, [&](const fiche::Statement& statement) { say_reading_fault(check, statement); });
}

}  // namespace tamis::rules
