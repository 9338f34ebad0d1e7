#include "core/flow/point.h"

#include <algorithm>

namespace tamis::flow {
namespace {

void widen(Range& range, const Range& other, bool first) {
  range = first ? other : Range{std::min(range.low, other.low), std::max(range.high, other.high)};
}

void widen(Matter& matter, const Matter& other, bool first) {
  for (std::size_t i = 0; i < constituents; ++i) widen(matter.parts[i], other.parts[i], first);
  widen(matter.energy_kcal, other.energy_kcal, first);
  matter.melting_j = std::max(matter.melting_j, other.melting_j);
  matter.off = std::max(matter.off, other.off);
  matter.gone = std::max(matter.gone, other.gone);
  matter.took_water = std::max(matter.took_water, other.took_water);
  matter.took_fat = std::max(matter.took_fat, other.took_fat);
}

/// Why a figure is open: as it is on one way, or because the ways differ.
void put(Why& why, const Why& other, bool differ) {
  if (!why.any() || why.reason == Why::Reason::range) why = other.any() ? other : differ || why.any() ? Why{Why::Reason::range, -1, -1} : Why{};
}

bool differ(const Range& a, const Range& b) { return std::abs(a.low - b.low) > 1e-9 || std::abs(a.high - b.high) > 1e-9; }

void widen_grams(State& state, const Point& point, bool first) {
  if (!point.weighed()) {
    state.grams.reset();
    return;
  }
  if (!first && !state.grams) return;
  const Range left = left_of(point.matter);
  const Range here{point.grams * left.low, point.grams * left.high};
  Range grams = state.grams.value_or(here);
  widen(grams, here, first);
  state.grams = grams;
}

}  // namespace

void widen(State& state, const Point& point, bool first) {
  const std::optional<Range> grams = state.grams;
  const Range celsius = state.celsius;
  bool shares_differ = false;
  widen_grams(state, point, first);
  widen(state.matter, point.matter, first);
  for (std::size_t i = 0; i < constituents; ++i) {
    const Range share = share_of(point.matter, static_cast<Constituent>(i));
    shares_differ = shares_differ || (!first && differ(share, state.shares[i]));
    widen(state.shares[i], share, first);
  }
  widen(state.kcal_per_g, energy_of(point.matter), first);
  widen(state.celsius, point.celsius, first);
  put(state.why_grams, point.why_grams, !first && grams && state.grams && differ(*grams, *state.grams));
  put(state.why_shares, point.why_shares, shares_differ);
  put(state.why_celsius, point.why_celsius, !first && differ(celsius, state.celsius));
  if (first || point.heat.celsius < state.heat.celsius) state.heat = point.heat;
  if (first || point.air == Action::Air::in) state.air = point.air;
  if (first || state.depth_mm == point.depth_mm) {
    state.depth_mm = point.depth_mm;
    state.depth = point.depth;
  } else {
    state.depth_mm.reset();
    state.depth = fiche::none;
  }
  if (first || point.vessel != fiche::none) state.vessel = point.vessel;
  state.roles |= point.roles;
  state.sure |= point.sure;
  state.assumed |= point.assumed;
  state.may |= point.may;
  state.allergens_open |= point.allergens_open;
}

Point point_of(const State& state) {
  Point made;
  made.grams = 1;
  made.matter = state.matter;
  made.celsius = state.celsius;
  made.why_grams = state.why_grams;
  made.why_shares = state.why_shares;
  made.why_celsius = state.why_celsius;
  made.heat = state.heat;
  made.air = state.air;
  made.roles = state.roles;
  made.sure = state.sure;
  made.assumed = state.assumed;
  made.may = state.may;
  made.allergens_open = state.allergens_open;
  return made;
}

}  // namespace tamis::flow
