#include "core/rules/reading_fault.h"

namespace tamis::rules {

base::Finding& say_reading_fault(Check& check, const fiche::Statement& statement) {
  const base::Finding& fault = *statement.fault;
  const bool temperature_as_amount = statement.at == fiche::At::unknown && statement.value == fiche::Value::amount;
  const std::string_view otherwise = temperature_as_amount
                                         ? "write how much it is; a temperature it must have is at=\"…\""
                                         : "write a measure of that kind, or move this one to where it belongs";
  base::Finding& made = check.say(fault.where, fault.message, fault.advice.empty() ? std::string(otherwise) : fault.advice);
  if (!fault.source.empty()) made.source = fault.source;
  return made;
}

void say_reading_faults(Check& check, std::string_view rule) {
  for_each_reading_fault(check, rule, [&](const fiche::Statement& statement) { say_reading_fault(check, statement); });
}

}  // namespace tamis::rules
