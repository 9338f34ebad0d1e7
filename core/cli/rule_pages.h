#ifndef CORE_CLI_RULE_PAGES_H
#define CORE_CLI_RULE_PAGES_H

#include <string>
#include <vector>

#include "core/base/finding.h"
#include "core/cli/kitchen_plugins.h"
#include "core/rules/rule.h"

namespace tamis::cli {

/// All rules by topic, a line each, and the checks that plugins add.
std::string rule_list(const std::vector<KitchenPlugins::Offer>& plugin_checks);

/// What there is to say of a rule, built in or a plugin's.
struct RulePage {
  std::string id;
  base::Severity severity = base::Severity::warning;
  std::string topic, summary;
  std::vector<std::string> explanation;  ///< paragraphs
  std::string kitchen;                   ///< what the kitchen file says where the examples are judged
  std::string bad, good;                 ///< "" where a plugin has none
  std::string bad_document, good_document;
  std::string source, schemas;
};
RulePage page_of(const rules::Rule& rule);
RulePage page_of(const KitchenPlugins::Offer& check);

/// One rule for a terminal: what, why, the wrong example with what the check says of it, the right one, the
/// source.
std::string rule_text(const rules::Rule& rule);
std::string rule_text(const KitchenPlugins::Offer& check);

/// All that is known of the rules: {"schema": 1, "rules": [{"id", "severity", "topic", "summary", "explanation",
/// "bad", "good", "kitchen", "bad_document", "good_document", "source", "schemas": [...]}]}; the documents are the
/// examples with what they need around them to be checked. The topic of a plugin's is "plugin ID".
std::string rules_json(const std::vector<RulePage>& wanted);

}  // namespace tamis::cli

#endif
