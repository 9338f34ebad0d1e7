#include <string>

#include "core/rules/balance.h"
#include "core/rules/figure_text.h"
#include "core/rules/registry.h"
#include "core/rules/sentence.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;

/// What a vessel takes: of a kitchen's machine, or as the fiche states it of its equipment.
struct Vessel {
  std::string name;
  const measure::Amount* least = nullptr;
  const measure::Amount* most = nullptr;
};

const measure::Amount* amount_at(const Check& check, Node node, At at) {
  const fiche::Statement* said = check.fiche.statement(node, at);
  return said != nullptr && said->amount ? &*said->amount : nullptr;
}

std::optional<Vessel> vessel_of(const Check& check, std::string_view on) {
  if (on.empty()) return std::nullopt;
  for (const fiche::Kitchen::Machine& machine : check.kitchen.machines) {
    if (machine.id != on) continue;
    return Vessel{machine.name.empty() ? machine.id : machine.name, machine.least ? &*machine.least : nullptr,
                  machine.most ? &*machine.most : nullptr};
  }
  for (auto [known, end] = check.fiche.ids.equal_range(on); known != end; ++known) {
    if (check.document.el(known->second) != El::equipment) continue;
    return Vessel{std::string(on), amount_at(check, known->second, At::least), amount_at(check, known->second, At::most)};
  }
  return std::nullopt;
}

/// What a machine whips up fills it at 0.2 g/ml (common practice).
constexpr double lightest = 0.2;

/// It is done in several goes.
bool in_goes(const Check& check, Node step) {
  return check.document.find(step, At::load) != fiche::none || check.document.find(step, At::repeat) != fiche::none ||
         says(words_around(check.document, step), {"batch", "at a time", "in two", "in three", "in several", "goes", "half",
                                                   "fois", "portionsweise", "tandas"});
}

void look_at(Check& check, const flow::Step& step) {
  const fiche::Attr on = check.document.find(step.node, At::on);
  if (on == fiche::none || !step.in || step.in->high <= 0) return;
  const auto vessel = vessel_of(check, check.document.attribute_value(on));
  if (!vessel || in_goes(check, step.node)) return;
  const auto most = vessel->most == nullptr ? std::nullopt : grams_stated(*vessel->most);
  auto least = vessel->least == nullptr ? std::nullopt : grams_stated(*vessel->least);
  if (least && vessel->least->kind == measure::Kind::volume) least->low *= lightest / 0.5;
  const std::string amount = grams_text(*step.in);
  if (most && step.in->low > most->high * (1 + weighing)) {
    check.say(check.document.attribute_span(on), amount + " are more than the " + vessel->name + " takes at once",
              "say that it is done in batches, or take a larger one");
  } else if (least && step.in->high < least->low * (1 - weighing)) {
    check.say(check.document.attribute_span(on), amount + " are less than the " + vessel->name + " works with",
              "make a larger batch, take a smaller one, or work by hand");
  }
}

/// What is made, against the least and the most that its own yield says the vessel makes well.
void look_at_yield(Check& check, Node yield, const std::optional<flow::Grams>& made) {
  if (yield == fiche::none || !made || made->high <= 0) return;
  for (const At at : {At::least, At::most}) {
    const fiche::Statement* said = check.fiche.statement(yield, at);
    const auto stated = said == nullptr || !said->amount ? std::nullopt : grams_stated(*said->amount);
    if (!stated) continue;
    const bool less = at == At::least && made->high < stated->low * (1 - weighing);
    const bool more = at == At::most && made->low > stated->high * (1 + weighing);
    if (!less && !more) continue;
    check.say(said->where, "the batch makes " + grams_text(*made) + ", and the yield says at " + (less ? "least " : "most ") + said->text,
              less ? "make a larger batch, or lower the least if it was tried" : "divide the batch, or raise the most if it was tried");
    return;
  }
}

void run(Check& check) {
  for (const flow::Step& step : check.flow.steps) look_at(check, step);
  const Node root = check.document.root();
  if (root == fiche::none) return;
  for (const flow::Total& total : check.flow.components) {
    look_at_yield(check, check.document.child(total.node, El::yield), total.out);
  }
  look_at_yield(check, check.document.child(root, El::yield), check.flow.whole.out);
}

}  // namespace

/// Step::in against the least and most of what the step is done on; what is made against those of its own yield.
const Rule batch_outside_vessel = {
    .id = "batch-outside-vessel",
    .severity = base::Severity::warning,
    .topic = "balance",
    .summary = "a batch that its machine or vessel does not take",
    .explanation = R"(A mixer of five litres with eight kilograms of dough climbs off the bench; a whisk that does not reach three whites
beats nothing. What goes into a step is held against the least and the most of the machine it is done on: the kitchen
file's, or the fiche's own equipment. What is made is held against the least and the most that its yield states.

The most by volume is taken at 1.35 g/ml, the least at 0.2 g/ml, for what is whipped. Steps that say they are done in
several goes are let be.)",
    .bad = R"(    <equipment id="churn" kind="churn" most="500 g">ice cream churn</equipment>
    <ingredient id="cream" food="cream-35">500 g</ingredient>
    <ingredient id="milk" food="milk-whole">500 g</ingredient>
    <step on="churn">Churn the <use of="cream">cream</use> and <use of="milk">milk</use> cold.</step>)",
    .good = R"(    <equipment id="churn" kind="churn" most="500 g">ice cream churn</equipment>
    <ingredient id="cream" food="cream-35">500 g</ingredient>
    <ingredient id="milk" food="milk-whole">500 g</ingredient>
    <step on="churn">Churn the <use of="cream">cream</use> and <use of="milk">milk</use> cold, in batches.</step>)",
    .source = "common practice",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
