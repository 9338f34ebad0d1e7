#include <array>
#include <memory>
#include <string>
#include <vector>

#include "core/cli/arguments.h"
#include "core/cli/json_text.h"
#include "core/cli/output.h"
#include "core/cli/rule_pages.h"
#include "core/cli/verb.h"
#include "core/rules/reference.h"
#include "core/rules/rule.h"

namespace tamis::cli {
namespace {

constexpr std::array options{
    Option{"report", 'r', "FORM", "how to tell it; json gives all that is known of each rule", "text|json"},
    Option{"page", 0, "", "print the reference page of all rules (Markdown)", ""},
};

constexpr std::string_view help =
    R"(Without RULE it lists what the check looks at. RULE is the word in brackets at
the end of a finding.

  $ tamis explain empty-step
  empty-step (error)
    a step without words
  …
)";

Exit no_such_rule(const std::string& typed) {
  std::vector<std::string_view> ids;
  for (const rules::Rule* rule : rules::rules()) ids.push_back(rule->id);
  complain("there is no rule \"" + typed + "\"");
  const std::string near = did_you_mean(typed, ids);
  say("  → " + (near.empty() ? "\"tamis explain\" lists the rules" : near));
  return Exit::failed;
}

Exit run_explain(const Request& request) {
  if (request.has("page")) {
    print(rules::reference_page());
    return Exit::good;
  }
  std::vector<const rules::Rule*> wanted;
  for (const std::string& word : request.words) {
    const rules::Rule* rule = rules::rule_by_id(word);
    if (rule == nullptr) return no_such_rule(word);
    wanted.push_back(rule);
  }
  if (request.get("report") == "json") {
    if (wanted.empty()) wanted.assign(rules::rules().begin(), rules::rules().end());
    print(rules_json(wanted));
  } else if (wanted.empty()) {
    print(rule_list());
  } else {
    for (const rules::Rule* rule : wanted) print(rule_text(*rule));
  }
  return Exit::good;
}

}  // namespace

extern const Verb verb_explain;
const Verb verb_explain{
    .name = "explain",
    .summary = "tell what a finding means, with an example that is wrong and one that is right",
    .usage = "tamis explain [OPTIONS] [RULE...]",
    .help = help,
    .words = "RULE",
    .options = options,
    .run = run_explain};

}  // namespace tamis::cli
