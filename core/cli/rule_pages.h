#ifndef CORE_CLI_RULE_PAGES_H
#define CORE_CLI_RULE_PAGES_H

#include <span>
#include <string>
#include <vector>

#include "core/cli/kitchen_plugins.h"
#include "core/rules/rule.h"

namespace tamis::cli {

/// All rules by topic, a line each, and the checks that plugins add.
std::string rule_list(const std::vector<KitchenPlugins::Offer>& plugin_checks);

/// One check of a plugin for a terminal, from its manifest.
std::string plugin_check_text(const KitchenPlugins::Offer& check);

/// One rule for a terminal: what, why, the wrong example with what the check says of it, the right one, the
/// source.
std::string rule_text(const rules::Rule& rule);

/// All that is known of the rules: {"schema": 1, "rules": [{"id", "severity", "topic", "summary", "explanation",
/// "bad", "good", "kitchen", "bad_document", "good_document", "source", "schemas": [...]}]}; the documents are the examples with
/// what they need around them to be checked.
std::string rules_json(std::span<const rules::Rule* const> wanted);

}  // namespace tamis::cli

#endif
