#include <array>
#include <memory>
#include <string>
#include <vector>

#include "core/cli/arguments.h"
#include "core/cli/json_text.h"
#include "core/cli/figure_pages.h"
#include "core/cli/output.h"
#include "core/cli/rule_pages.h"
#include "core/cli/surroundings.h"
#include "core/cli/verb.h"
#include "core/rules/reference.h"
#include "core/rules/rule.h"

namespace tamis::cli {
namespace {

constexpr std::array options{
    Option{"report", 'r', "FORM", "how to tell it; json gives all that is known of each rule", "text|json"},
    Option{"kitchen", 'k', "FILE", "tell of this kitchen's plugins too, not of the kitchen.xml found above", "FILE"},
    Option{"figures", 0, "", "list the temperatures and proportions that rules hold a recipe to, with their sources", ""},
    Option{"page", 0, "", "print the reference page of all rules (Markdown)", ""},
};

constexpr std::string_view help =
    R"(Without RULE it lists what the check looks at. RULE is the word in brackets at
the end of a finding.

  $ tamis explain empty-step
  empty-step (error)
    a step without words
  …

--figures lists what the rules hold a recipe to. Where sources disagree, both
stand there.

  $ tamis explain --figures
  …
  custard cooks: 82–85 °C
    common practice, from memory: crème anglaise, curdles above about 85 without
    starch
  …
)";

using Offers = std::vector<KitchenPlugins::Offer>;

Offers plugin_checks(KitchenPlugins& plugins) {
  Offers checks = plugins.offers();
  std::erase_if(checks, [](const auto& offer) { return offer.addition->kind != lua::Addition::Kind::check; });
  return checks;
}

const KitchenPlugins::Offer* check_named(const Offers& checks, const std::string& id) {
  for (const auto& offer : checks)
    if (offer.addition->id == id) return &offer;
  return nullptr;
}

Exit no_such_rule(const std::string& typed, const Offers& checks) {
  std::vector<std::string_view> ids;
  for (const auto& offer : checks) ids.push_back(offer.addition->id);
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
  if (request.has("figures")) {
    print(request.get("report") == "json" ? figures_json() : figure_list());
    return Exit::good;
  }
  Surroundings surroundings(request.get("kitchen"));
  KitchenPlugins& plugins = surroundings.plugins("./kitchen.xml");
  const Offers checks = plugin_checks(plugins);
  std::vector<const rules::Rule*> wanted;
  Offers of_plugins;
  for (const std::string& word : request.words) {
    const rules::Rule* rule = rules::rule_by_id(word);
    const KitchenPlugins::Offer* check = check_named(checks, word);
    if (rule == nullptr && check == nullptr) return no_such_rule(word, checks);
    if (rule != nullptr)
      wanted.push_back(rule);
    else
      of_plugins.push_back(*check);
  }
  if (request.get("report") == "json") {
    if (request.words.empty()) wanted.assign(rules::rules().begin(), rules::rules().end());
    if (request.words.empty()) of_plugins = checks;
    std::vector<RulePage> pages;
    for (const rules::Rule* rule : wanted) pages.push_back(page_of(*rule));
    for (const auto& offer : of_plugins) pages.push_back(page_of(offer));
    print(rules_json(pages));
  } else if (request.words.empty()) {
    print(rule_list(checks));
  } else {
    for (const rules::Rule* rule : wanted) print(rule_text(*rule));
    for (const auto& offer : of_plugins) print(harmless(rule_text(offer)));
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
