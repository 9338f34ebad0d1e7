#ifndef CORE_RULES_REGISTRY_H
#define CORE_RULES_REGISTRY_H

#include "core/rules/rule.h"

namespace tamis::rules {

/// Every rule by its name, from the one list (rules.inc); each is defined in the file of that name.
#define TAMIS_RULE(name) extern const Rule name;
#include "core/rules/rules.inc"
#undef TAMIS_RULE

}  // namespace tamis::rules

#endif
