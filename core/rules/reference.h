#ifndef CORE_RULES_REFERENCE_H
#define CORE_RULES_REFERENCE_H

#include <string>
#include <string_view>

#include "core/rules/rule.h"

namespace tamis::rules {

/// All rules as Markdown: a table of contents by topic, then each rule with its severity, explanation, examples and
/// source. core/rules/rules.md holds it between its markers (a test says when it does not).
std::string reference_page();

/// An example as it can be shown: bytes that are not UTF-8 as \xE8, names past any limit shortened.
std::string shown_example(std::string_view example);

}  // namespace tamis::rules

#endif
