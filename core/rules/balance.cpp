#include "core/rules/balance.h"

#include <algorithm>
#include <cmath>

#include "core/rules/figure_text.h"
#include "core/rules/heating.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;

bool is_heated(const Check& check, Node owner) {
  return std::any_of(check.fiche.steps.begin(), check.fiche.steps.end(), [&](const fiche::Step& step) {
    if (step.component != owner && owner != check.document.root()) return false;
    const std::string_view on = check.document.get(step.node, At::on);
    return heating_of(check, step).need != HeatNeed::none || on == "hob" || on == "oven" ||
           check.document.child(step.node, El::oven_temp) != fiche::none;
  });
}

/// Pasta, pulses and rice take up what they boil in.
bool takes_up_water(const Check& check, Node owner) {
  return std::any_of(check.fiche.ingredients.begin(), check.fiche.ingredients.end(), [&](const fiche::Ingredient& one) {
    return (one.component == owner || owner == check.document.root()) &&
           check.document.get(one.node, At::purpose) == "boiling";
  });
}

bool states_loss_in_cooking(const Check& check, Node yield) {
  if (yield == fiche::none) return false;
  for (Node c = check.document.first_child(yield); c != fiche::none; c = check.document.next(c)) {
    if (check.document.el(c) == El::loss && check.document.get(c, At::what) == "cooking") return true;
  }
  return false;
}

}  // namespace

Allowance allowance_for(const Check& check, Node owner, Node yield) {
  Allowance out;
  out.judged = !takes_up_water(check, owner);
  if (is_heated(check, owner)) out.least = states_loss_in_cooking(check, yield) ? 0.85 : 0.6;
  return out;
}

std::string_view Allowance::difference(const flow::Grams& stated, const flow::Grams& made) const {
  if (!judged) return {};
  if (stated.low > made.high * most) return "more than";
  return stated.high < made.low * least ? "much less than" : "";
}

void for_each_yield(const Check& check, const std::function<void(Node, Node, const flow::Grams&)>& look_at) {
  const Node root = check.document.root();
  if (root == fiche::none) return;
  const auto offer = [&](Node owner, const std::optional<flow::Grams>& made) {
    const Node yield = check.document.child(owner, El::yield);
    if (yield != fiche::none && made && made->high > 0) look_at(owner, yield, *made);
  };
  for (const flow::Total& total : check.flow.components) offer(total.node, total.out);
  offer(root, check.flow.whole.out);
}

std::optional<flow::Grams> grams_stated(const measure::Amount& amount) {
  if (!amount.has_figure() || !amount.low_base().ok() || !amount.high_base().ok()) return std::nullopt;
  const double low = amount.low_base().approximate();
  const double high = amount.high_base().approximate();
  if (amount.kind == measure::Kind::mass) return flow::Grams{low, high};
  if (amount.kind == measure::Kind::volume) return flow::Grams{0.5 * low, 1.35 * high};
  return std::nullopt;
}

std::string grams_text(const flow::Grams& grams) {
  const std::string low = figure_text(grams.low, measure::Kind::mass);
  const std::string high = figure_text(grams.high, measure::Kind::mass);
  return low == high || grams.high - grams.low < 0.01 * grams.high ? high : low + " to " + high;
}

std::string called(const flow::Thing& thing) {
  std::string out = "\"";
  return out.append(thing.name.empty() ? thing.id : thing.name).append("\"");
}

base::Span place_of(const Check& check, const flow::Use& use) {
  if (use.mark != fiche::none) return check.document.head_span(use.mark);
  return check.document.head_span(check.flow.steps[index_of(use.step)].node);
}

bool made_together(const flow::Flow& flow, const flow::Use& a, const flow::Use& b) {
  const flow::Step& one = flow.steps[index_of(a.step)];
  const flow::Step& other = flow.steps[index_of(b.step)];
  if (one.optional || other.optional || a.instead || b.instead) return false;
  return one.branch.empty() || other.branch.empty() || one.branch == other.branch;
}

bool is_marked(const flow::Flow& flow, Node component) {
  return std::any_of(flow.components.begin(), flow.components.end(),
                     [&](const flow::Total& total) { return total.node == component && total.marked; });
}

}  // namespace tamis::rules
