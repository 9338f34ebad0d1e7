#ifndef CORE_CLI_RULE_PAGES_H
#define CORE_CLI_RULE_PAGES_H

#include <span>
#include <string>

#include "core/rules/rule.h"

namespace tamis::cli {

/// All rules by topic, a line each.
std::string rule_list();

/// One rule for a terminal: what, why, the wrong example with what the check says of it, the right one, the
/// source.
std::string rule_text(const rules::Rule& rule);

/// All that is known of the rules: {"schema": 1, "rules": [{"id", "severity", "topic", "summary", "explanation",
/// "bad", "good", "source", "schemas": [...]}]}.
std::string rules_json(std::span<const rules::Rule* const> wanted);

/// The reference page of all rules, Markdown.
std::string rules_page();

}  // namespace tamis::cli

#endif
