#include "core/rules/stale.h"

#include "core/rules/expected_mass.h"

namespace tamis::rules {
namespace {

using measure::Kind;

/// The mass that a volume of the food can be, held against the mass that is stated.
Gap across_density(const StatementPair& pair, const measure::Amount& shown, const measure::Amount& other) {
  Gap gap;
  if (pair.food == nullptr || is_rough(shown) || is_rough(other)) return gap;
  const auto range = mass_of_volume(*pair.food, pair.prep);
  if (!range) return gap;
  const bool shown_is_mass = shown.kind == Kind::mass;
  const double mass = (shown_is_mass ? shown : other).middle_base().approximate();
  const double volume = (shown_is_mass ? other : shown).middle_base().approximate();
  if (!(volume > 0) || !(mass > 0)) return gap;
  const double density = mass / volume;
  gap.apart = density < range->least || density > range->most;
  const double expected = volume * range->usual;
  gap.times = std::max(mass, expected) / std::min(mass, expected);
  return gap;
}

Gap amounts(const StatementPair& pair, fiche::El where) {
  const measure::Amount& shown = *pair.shown->amount;
  const measure::Amount& other = *pair.other->amount;
  if (!shown.has_figure() || !other.has_figure()) return {};
  const double bearable = pair.food == nullptr ? 0.05 : food::tolerance_of(pair.food->role).approximate();
  if (shown.kind == other.kind) return gap_between(shown, other, where, bearable);
  const bool crossed = (shown.kind == Kind::mass && other.kind == Kind::volume) ||
                       (shown.kind == Kind::volume && other.kind == Kind::mass);
  return crossed ? across_density(pair, shown, other) : Gap{};
}

}  // namespace

Gap stale_gap(const StatementPair& pair, fiche::El where) {
  if (pair.shown->amount && pair.other->amount) return amounts(pair, where);
  if (pair.shown->share && pair.other->share) {
    const measure::Share& shown = *pair.shown->share;
    const measure::Share& other = *pair.other->share;
    if (shown.form == measure::Share::Form::amount && other.form == measure::Share::Form::amount) {
      return gap_between(shown.amount, other.amount, where, 0.05);
    }
    return {};
  }
  for (std::size_t i = 0; i < pair.shown->lengths.size() && i < pair.other->lengths.size(); ++i) {
    const Gap gap = gap_between(pair.shown->lengths[i], pair.other->lengths[i], where, 0.05);
    if (gap.apart) return gap;
  }
  return {};
}

bool is_stale_at(const Check& check, fiche::Node n) {
  if (check.document.find(n, fiche::At::was) == fiche::none && check.document.find(n, fiche::At::was_also) == fiche::none) {
    return false;
  }
  for (const StatementPair& pair : was_pairs(check.fiche)) {
    if (pair.shown->node == n && stale_gap(pair, check.document.el(n)).apart) return true;
  }
  return false;
}

}  // namespace tamis::rules
