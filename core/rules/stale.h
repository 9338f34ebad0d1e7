#ifndef CORE_RULES_STALE_H
#define CORE_RULES_STALE_H

#include "core/rules/agreement.h"
#include "core/rules/rule.h"
#include "core/rules/statement_pair.h"

namespace tamis::rules {

/// How far a figure lies from the author's own, which a conversion kept beside it: beyond what rounding and what the
/// food may bear explain. A mass that became a volume is compared by the food's density.
Gap stale_gap(const StatementPair& pair, fiche::El where);

/// Whether any figure of this element has moved away from the author's own (stale-conversion says so).
bool is_stale_at(const Check& check, fiche::Node n);

}  // namespace tamis::rules

#endif
