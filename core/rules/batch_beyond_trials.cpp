#include <algorithm>
#include <cstdlib>

#include "core/rules/figure_text.h"
#include "core/rules/near_miss.h"
#include "core/rules/readiness.h"
#include "core/rules/registry.h"
#include "core/rules/trials.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::Node;
using Part = std::optional<double> BatchSize::*;

/// How many times the largest batch tried a fiche may make: one and a half (common practice), or the kitchen's value.
double most_times(const Check& check) {
  const auto set = check.kitchen.rule_values.find("batch-beyond-trials");
  if (set == check.kitchen.rule_values.end()) return 1.5;
  const auto read = base::Ratio::parse(set->second);
  return read && read->approximate() >= 1 ? read->approximate() : 1.5;
}

std::string size_text(Part part, double size) {
  if (part == &BatchSize::grams) return figure_text(size, measure::Kind::mass);
  if (part == &BatchSize::millilitres) return figure_text(size, measure::Kind::volume);
  return figure_text(size, measure::Kind::count) + (part == &BatchSize::portions ? " portions" : " pieces");
}

struct Largest {
  double size = 0;
  const Trial* trial = nullptr;
};

Largest largest_tried(const Check& check, const std::vector<Trial>& trials, Part part) {
  Largest out;
  for (const Trial& trial : trials) {
    if (trial.verdict == Trial::Verdict::failed) continue;
    const auto size = batch_size(trial.batch, check.fiche.reading).*part;
    if (size && *size > out.size) out = {*size, &trial};
  }
  return out;
}

/// Compares in the first way that both the yield and a trial speak of; false when there is none.
bool compare(Check& check, Node yield, const std::vector<Trial>& trials) {
  const BatchSize written = batch_size(check, yield);
  for (const Part part : {&BatchSize::portions, &BatchSize::pieces, &BatchSize::grams, &BatchSize::millilitres}) {
    if (!(written.*part)) continue;
    const Largest tried = largest_tried(check, trials, part);
    if (tried.trial == nullptr) continue;
    const double size = *(written.*part);
    if (size > tried.size * most_times(check)) {
      base::Finding& finding = say_to_share(
          check, check.document.head_span(yield),
          "written for " + size_text(part, size) + ", and the largest batch tried was " + size_text(part, tried.size),
          "make it once at this size and add a <trial>; look at pans, oven loads, cooling and mixing times first");
      finding.related.push_back({check.document.head_span(tried.trial->node), "the largest batch tried", {}, {}, {}});
    }
    return true;
  }
  return false;
}

/// A scaling says how many times the author's batch it is; what was tried was the author's.
void look_at_scaling(Check& check) {
  const Node root = check.document.root();
  const fiche::Attr scaled = check.document.find(root, At::scaled_by);
  if (scaled == fiche::none) return;
  const auto times = measure::read_number(check.document.attribute_value(scaled), check.fiche.reading);
  if (!times || !times->ok() || times->approximate() <= most_times(check)) return;
  say_to_share(check, check.document.attribute_span(scaled),
               times_text(times->approximate()) + " the author's batch, and no trial says that it was made at this size",
               "make it once at this size and add a <trial>; look at pans, oven loads, cooling and mixing times first");
}

void run(Check& check) {
  if (!is_shared(check)) return;
  const std::vector<Trial> trials = trials_of(check.document);
  if (trials.empty()) return;  // no-trial-passed says so
  bool compared = false;
  for (const Node yield : check.fiche.yields) {
    if (check.document.parent(yield) == check.document.root()) compared |= compare(check, yield, trials);
  }
  if (!compared) look_at_scaling(check);
}

}  // namespace

/// The fiche makes much more than any trial of it made.
const Rule batch_beyond_trials = {
    .id = "batch-beyond-trials",
    .severity = base::Severity::advice,
    .topic = "sharing",
    .summary = "written for a batch much larger than any that was tried",
    .explanation = R"(What works for 24 need not work for 140: a bigger pan reduces at another pace, a fuller oven recovers more slowly, a
deep tub cools for hours longer, and the mixer has a most. Tried at 12 and 24, the fiche is only known to work there.

The rule speaks when the yield is more than one and a half times the largest batch of a trial that did not fail, in
portions, pieces, weight or volume, whichever both state; a kitchen sets another figure with
<rule id="batch-beyond-trials" value="2"/>. Where nothing can be compared, scaled-by is held against the same figure.)",
    .bad = R"(<fiche xmlns="urn:tamis:fiche:1" id="plum-water" state="released" lang="en" units="metric">
  <title>Plum water</title>
  <yield portions="140"/>
  <component id="water" title="Plum water">
    <ingredient id="plums" food="plum" prep="stoned">14 kg</ingredient>
    <step do="strain">Crush the <use of="plums">plums</use> and strain them through muslin.</step>
    <keep where="fridge, covered" at="at most 4 °C" for="2 days"/>
  </component>
  <allergens>None of those that the law names.</allergens>
  <trial date="2026-08-02" by="sous" batch="12 portions" verdict="passed"/>
  <trial date="2026-08-09" by="sous" batch="24 portions" verdict="passed"/>
</fiche>)",
    .good = R"(<fiche xmlns="urn:tamis:fiche:1" id="plum-water" state="released" lang="en" units="metric">
  <title>Plum water</title>
  <yield portions="30"/>
  <component id="water" title="Plum water">
    <ingredient id="plums" food="plum" prep="stoned">3 kg</ingredient>
    <step do="strain">Crush the <use of="plums">plums</use> and strain them through muslin.</step>
    <keep where="fridge, covered" at="at most 4 °C" for="2 days"/>
  </component>
  <allergens>None of those that the law names.</allergens>
  <trial date="2026-08-02" by="sous" batch="12 portions" verdict="passed"/>
  <trial date="2026-08-09" by="sous" batch="24 portions" verdict="passed"/>
</fiche>)",
    .source = "common practice: one and a half times the batch that was tried",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
