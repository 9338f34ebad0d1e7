#include "core/flow/around.h"

#include <algorithm>
#include <array>

#include "core/flow/celsius.h"

namespace tamis::flow {
namespace {

constexpr double swing = 1;  // K, of a cold place that is opened now and then (common practice)

Around plainly(const physics::Medium& medium) { return {&medium, {medium.celsius, medium.coefficient, medium.moving}}; }

/// Words of the trade for the media's own ids.
constexpr std::array<std::pair<std::string_view, std::string_view>, 12> other_words{{
    {"refrigerator", "fridge"}, {"chiller", "blast-chiller"}, {"ice", "ice-bath"}, {"air", "still-air"}, {"room", "still-air"}, {"bench", "still-air"},
    {"table", "still-air"}, {"bain-marie", "water-bath-still"}, {"sous-vide", "water-bath"}, {"steamer", "steam"}, {"oven", "oven-fan"}, {"boiling", "boiling-water"},
}};

std::string_view own_kind(const fiche::Kitchen& kitchen, std::string_view word) {
  for (const fiche::Kitchen::Oven& oven : kitchen.ovens)
    if (oven.id == word) return oven.mode == "deck" || oven.mode == "static" ? "oven-deck" : "oven-fan";
  for (const fiche::Kitchen::Machine& machine : kitchen.machines)
    if (machine.id == word) return machine.kind;
  return word;
}

}  // namespace

std::optional<Around> around_in(const fiche::Kitchen& kitchen, std::string_view word) {
  const fiche::Kitchen::Cold* own = nullptr;
  for (const fiche::Kitchen::Cold& cold : kitchen.colds)
    if (cold.id == word) own = &cold;
  std::string_view kind = own != nullptr ? std::string_view(own->kind) : own_kind(kitchen, word);
  for (const auto& [other, id] : other_words)
    if (other == kind) kind = id;
  if (own == nullptr) {
    const auto same = std::count_if(kitchen.colds.begin(), kitchen.colds.end(), [kind](const auto& cold) { return cold.kind == kind; });
    for (const fiche::Kitchen::Cold& cold : kitchen.colds)
      if (same == 1 && cold.kind == kind) own = &cold;
  }
  const physics::Medium* medium = physics::medium_named(kind);
  if (medium == nullptr) return std::nullopt;
  Around out = plainly(*medium);
  if (kind == "boiling-water" || kind == "steam") {
    const Range boiling = boiling_in(kitchen);
    out.exposure.celsius = {boiling.low, boiling.middle(), boiling.high};
  }
  if (own != nullptr && own->at_c) {
    const double at = own->at_c->approximate();
    out.exposure.celsius = {at - swing, at, at + swing};
  }
  if (own != nullptr && own->coefficient) out.exposure.coefficient = exactly(*own->coefficient);
  return out;
}

}  // namespace tamis::flow
