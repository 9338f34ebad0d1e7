#include <algorithm>

#include "core/flow/stated_time.h"
#include "core/rules/registry.h"
#include "core/rules/time_limits.h"

namespace tamis::rules {
namespace {

using fiche::At;
using flow::TimeMark;
using flow::TimeRange;
using Seconds = flow::TimeNetwork::Seconds;

/// The shortest of those that stand for each other, else the longest; null when there are none.
const TimeMark* telling(const std::vector<TimeMark>& marks, std::initializer_list<std::string_view> of, const fiche::Document& document) {
  const TimeMark* out = nullptr;
  for (const TimeMark& mark : marks) {
    const std::string_view is_of = document.get(mark.statement->node, At::of);
    if (mark.role != TimeMark::Role::length || std::find(of.begin(), of.end(), is_of) == of.end()) continue;
    if (!mark.statement->amount->has_figure()) continue;  // a word is not held against a figure here
    const bool better = out == nullptr || (mark.one_of_several ? mark.range.least < out->range.least
                                                                : mark.range.least > out->range.least);
    if (better) out = &mark;
  }
  return out;
}

void hold_against(Check& check, fiche::Node step, const TimeMark* mark, std::optional<TimeRange> stated, const char* what) {
  if (mark == nullptr || !stated || !stated->most || mark->range.least <= *stated->most) return;
  base::Finding& finding = check.say(mark->statement->where,
                                     "the sentence says " + mark->statement->text + ", and the step gives " +
                                         time_words(*stated->most) + what,
                                     "bring the two together: plans are made from the step's own times");
  for (const At attribute : {At::hands, At::unattended}) {
    if (const auto* statement = check.fiche.statement(step, attribute)) {
      finding.related.push_back({statement->where, "the step's time", {}, {}, {}});
    }
  }
}

void look_at(Check& check, fiche::Node step) {
  const bool has_both = (check.document.find(step, At::hands) != fiche::none || check.document.find(step, At::unattended) != fiche::none) &&
                        check.document.child(step, fiche::El::time) != fiche::none;
  if (!has_both || check.document.find(step, At::repeat) != fiche::none) return;
  const std::vector<TimeMark> marks = flow::time_marks(check.fiche, step);
  const flow::StepLength length = flow::read_length(check.fiche, step, marks);
  if (!length.hands && !length.unattended) return;
  hold_against(check, step, telling(marks, {"hands"}, check.document), length.hands, " of hands-on time");
  hold_against(check, step, telling(marks, {"unattended"}, check.document), length.unattended, " of unattended time");
  if (!length.unattended) return;  // hands alone leave open how long it goes on by itself
  TimeRange all = length.hands.value_or(TimeRange{0, 0});
  const bool ends = all.most && length.unattended->most;
  if (!ends) return;
  all.most = *all.most + *length.unattended->most;
  hold_against(check, step, telling(marks, {""}, check.document), all, " in all");
}

void run(Check& check) {
  for (const fiche::Step& step : check.fiche.steps) look_at(check, step.node);
}

}  // namespace

/// A sentence that speaks of a longer time than the step's own hands and unattended allow.
const Rule step_shorter_than_its_sentence = {
    .id = "step-shorter-than-its-sentence",
    .severity = base::Severity::warning,
    .topic = "order",
    .summary = "a step whose hands and unattended time are less than its sentence asks for",
    .explanation = R"(The sentence bakes for 40 minutes and the step counts 14: the card tells the cook one time, and the plan that is
made from hands and unattended another. One was changed and the other forgotten.

Hands-on time alone says nothing of how long the oven goes on by itself, and several times in a sentence count as
their longest only; figures for another batch or another oven are let be where one of them fits.)",
    .bad = R"(    <step hands="3 min" unattended="14 min">Bake at <oven-temp mode="fan">180 °C</oven-temp> for <time>40 to 45 min</time>, <until>until it springs back</until>.</step>)",
    .good = R"(    <step hands="3 min" unattended="42 min">Bake at <oven-temp mode="fan">180 °C</oven-temp> for <time>40 to 45 min</time>, <until>until it springs back</until>.</step>)",
    .source = "the document's specification (schemas/README.md, point 4)",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
