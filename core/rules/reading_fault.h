#ifndef CORE_RULES_READING_FAULT_H
#define CORE_RULES_READING_FAULT_H

#include "core/rules/rule.h"

namespace tamis::rules {

/// Calls `each` for every measure of the document that could not be read for this reason (the rule's id, as
/// core/measure/read.h lists them), in document order.
template <class Each>
void for_each_reading_fault(const Check& check, std::string_view rule, Each each) {
  for (const fiche::Statement& statement : check.fiche.statements) {
    if (statement.fault && statement.fault->rule == rule) each(statement);
  }
}

/// Says what the reader of measures said, under the rule at hand, with an advice of its own where the reader has none.
base::Finding& say_reading_fault(Check& check, const fiche::Statement& statement);

/// Says all measures that could not be read for this reason.
void say_reading_faults(Check& check, std::string_view rule);

}  // namespace tamis::rules

#endif
