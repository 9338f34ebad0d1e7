#include <algorithm>

#include "core/rules/readiness.h"
#include "core/rules/registry.h"
#include "core/rules/trials.h"

namespace tamis::rules {
namespace {

void run(Check& check) {
  if (!is_shared(check)) return;
  const std::vector<Trial> trials = trials_of(check.document);
  const auto passed = [](const Trial& trial) { return trial.verdict == Trial::Verdict::passed; };
  if (std::any_of(trials.begin(), trials.end(), passed)) return;
  const bool released = readiness_of(check.document) == Readiness::released;
  const std::string state = released ? "released" : "tested";
  const bool open = std::any_of(trials.begin(), trials.end(),
                                [](const Trial& trial) { return trial.verdict == Trial::Verdict::none; });
  const fiche::Attr said = check.document.find(check.document.root(), fiche::At::state);
  base::Finding& finding = say_to_share(
      check, check.document.value_span(said),
      trials.empty() ? state + ", and no trial is on record"
      : open         ? state + ", and no trial says that it passed"
                     : state + ", and every trial on record failed",
      open ? "add verdict=\"passed\", \"passed-with-changes\" or \"failed\" to the <trial>"
           : "make it once as written and add a <trial> with its date, batch and verdict, or set state=\"draft\"");
  for (const Trial& trial : trials) {
    finding.related.push_back({check.document.head_span(trial.node), "a trial", {}, {}, {}});
  }
}

}  // namespace

/// State "tested" or "released" without a trial that passed.
const Rule no_trial_passed = {
    .id = "no-trial-passed",
    .severity = base::Severity::advice,
    .topic = "sharing",
    .summary = "called tested or released, and no trial on record passed",
    .explanation = R"("Tested" means that someone made it from the page and wrote down what came of it; "released" that the house stands
behind it. Without a trial on record the word is an opinion, and nobody can see in which oven and in what batch it worked.

A trial whose verdict is "passed" or "passed-with-changes" will do; the changes belong in a <change>. A trial without
a verdict says that something was made, not how it went.)",
    .bad = R"(<fiche xmlns="urn:tamis:fiche:1" id="plum-water" state="tested" lang="en" units="metric">
  <title>Plum water</title>
  <component id="water" title="Plum water">
    <ingredient id="plums" food="plum" prep="stoned">1 kg</ingredient>
    <step do="strain">Crush the <use of="plums">plums</use> and strain them through muslin.</step>
    <keep where="fridge, covered" at="at most 4 °C" for="2 days"/>
  </component>
  <allergens>None of those that the law names.</allergens>
</fiche>)",
    .good = R"(<fiche xmlns="urn:tamis:fiche:1" id="plum-water" state="tested" lang="en" units="metric">
  <title>Plum water</title>
  <component id="water" title="Plum water">
    <ingredient id="plums" food="plum" prep="stoned">1 kg</ingredient>
    <step do="strain">Crush the <use of="plums">plums</use> and strain them through muslin.</step>
    <keep where="fridge, covered" at="at most 4 °C" for="2 days"/>
  </component>
  <allergens>None of those that the law names.</allergens>
  <trial date="2026-08-02" by="sous" batch="1 kg of plums" verdict="passed"/>
</fiche>)",
    .source = "the document's specification (schemas/README.md): tested means that there is a trial",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
