#include <algorithm>

#include "core/flow/amounts.h"
#include "core/flow/work.h"

namespace tamis::flow {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;
using fiche::Statement;
using Take = Use::Take;

constexpr std::size_t idx(int i) { return static_cast<std::size_t>(i); }

/// What the mark says: take="…", or an amount in its words.
void read_take(const Work& work, Use& use) {
  if (use.mark == fiche::none) return;
  const Statement* said = work.fiche.statement(use.mark, At::take);
  if (said != nullptr && said->share) {
    switch (said->share->form) {
      case measure::Share::Form::rest: use.take = Take::rest; return;
      case measure::Share::Form::amount: use.take = Take::amount; return;
      case measure::Share::Form::fraction:
        use.take = Take::share;
        use.share = said->share->fraction;
        return;
    }
  }
  if (said != nullptr) use.take = Take::unstated;  // it cannot be read
  if (said == nullptr && work.document.child(use.mark, El::amount) != fiche::none) use.take = Take::amount;
}

/// By a step that is made as well as this one: not on another branch, not only if something is so.
bool taken_by_others(const Flow& flow, const Use& use) {
  const std::vector<int>& uses = flow.things[idx(use.thing)].uses;
  return std::any_of(uses.begin(), uses.end(), [&](int index) {
    const Use& other = flow.uses[idx(index)];
    if (other.step == use.step) return false;
    const Step& there = flow.steps[idx(other.step)];
    const Step& here = flow.steps[idx(use.step)];
    return !there.optional && !here.optional && (there.branch.empty() || here.branch.empty() || there.branch == here.branch);
  });
}

/// What kitchens make weighs between that of a whipped cream and that of a boiled syrup (common practice).
std::optional<Grams> of_unknown_density(const measure::Amount& amount) {
  if (!amount.has_figure()) return std::nullopt;
  return Grams{0.5 * amount.low_base().approximate(), 1.35 * amount.high_base().approximate()};
}

/// The amount in a mark's words; of several, the one for the first yield.
const measure::Amount* amount_in_words(const Work& work, Node mark) {
  for (Node c = work.document.first_child(mark); c != fiche::none; c = work.document.next(c)) {
    if (work.document.el(c) != El::amount) continue;
    const std::string_view batch = work.document.get(c, At::batch);
    const bool other = !batch.empty() && work.first_yield != fiche::none && batch != work.document.get(work.first_yield, At::id);
    const Statement* said = other ? nullptr : work.fiche.statement(c);
    if (said != nullptr && said->amount) return &*said->amount;
  }
  return nullptr;
}

}  // namespace

void say_how_taken(Work& work) {
  for (Use& use : work.flow.uses) {
    read_take(work, use);
    if (use.take == Take::all && taken_by_others(work.flow, use)) use.take = Take::unstated;
  }
}

std::optional<Grams> amount_taken(const Work& work, const Use& use) {
  const Thing& thing = work.flow.things[idx(use.thing)];
  const fiche::Ingredient* ingredient = thing.kind == Thing::Kind::ingredient ? &work.fiche.ingredients[idx(thing.ingredient)] : nullptr;
  const Statement* said = work.fiche.statement(use.mark, At::take);
  const measure::Amount* amount = said != nullptr && said->share ? &said->share->amount : amount_in_words(work, use.mark);
  if (amount == nullptr) return std::nullopt;
  if ((ingredient == nullptr || ingredient->food == nullptr) && amount->kind == measure::Kind::volume) {
    return of_unknown_density(*amount);
  }
  if (ingredient == nullptr) return grams_of(*amount, nullptr, {}, {});
  return grams_of(*amount, ingredient->food, work.document.get(ingredient->node, At::prep),
                  work.document.get(ingredient->node, At::size));
}

}  // namespace tamis::flow
