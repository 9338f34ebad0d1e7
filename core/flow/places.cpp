#include "core/flow/places.h"

#include <algorithm>
#include <array>

#include "core/base/utf8.h"

namespace tamis::flow {
namespace {

// Common practice; the fridge's and freezer's as rules/cold_place_against_figure takes them.
constexpr Range usual_room{17, 26};
constexpr Range usual_fridge{0, 8};
constexpr Range usual_freezer{-26, -16};
constexpr Range usual_chiller{-20, 4};
constexpr Range ice{0, 3};
constexpr double swing = 3;  // of a fridge or freezer round its setting, of a room over a day

struct Stored {
  food::Role role;
  Range celsius;
  bool cold;
};
constexpr std::array stored{
#define STORE(role, low, high, cold) Stored{food::Role::role, {low, high}, cold},
#include "core/flow/stores.inc"
};

/// Of all cold places of one kind that state a figure.
Range of_kind(const fiche::Kitchen& kitchen, std::string_view kind, const Range& usual) {
  std::optional<Range> out;
  for (const fiche::Kitchen::Cold& cold : kitchen.colds) {
    if (cold.kind != kind || !cold.at_c) continue;
    const double at = cold.at_c->approximate();
    const Range here{at - swing, at + swing};
    out = out ? hull_of(*out, here) : here;
  }
  return out.value_or(usual);
}

}  // namespace

Places::Places(const fiche::Kitchen& kitchen) : kitchen_(kitchen), boiling_(boiling_in(kitchen)) {
  const auto house = kitchen.meanings.find(std::string_view("room-temperature"));
  room_ = usual_room;
  if (house != kitchen.meanings.end()) {
    if (const auto stated = celsius_of_word("room-temperature", kitchen)) room_ = {stated->low - swing, stated->high + swing};
  }
  fridge_ = of_kind(kitchen, "fridge", usual_fridge);
  freezer_ = of_kind(kitchen, "freezer", usual_freezer);
}

std::optional<Range> Places::cold(std::string_view on) const {
  while (!(on = base::trimmed(on)).empty()) {
    const std::string_view word = on.substr(0, on.find(' '));
    on.remove_prefix(word.size());
    for (const fiche::Kitchen::Cold& known : kitchen_.colds) {
      if (known.id != word) continue;
      if (known.at_c) return Range{known.at_c->approximate() - swing, known.at_c->approximate() + swing};
      return known.kind == "fridge" ? fridge_ : known.kind == "freezer" ? freezer_ : usual_chiller;
    }
    if (word == "fridge" || word == "refrigerator" || word == "cold-room") return fridge_;
    if (word == "freezer") return freezer_;
    if (word.find("chiller") != word.npos || word == "blast-freezer") return of_kind(kitchen_, "blast-chiller", usual_chiller);
    if (word == "ice" || word.starts_with("ice-")) return ice;
    for (const fiche::Kitchen::Machine& machine : kitchen_.machines) {
      if (machine.id == word && machine.kind.find("ice-bath") != std::string::npos) return ice;
    }
  }
  return std::nullopt;
}

Range Places::store(const food::Food& food) const {
  if (food.id.find("frozen") != std::string_view::npos) return freezer_;
  if (food.id.starts_with("oil-")) return room_;
  for (const Stored& row : stored) {
    if (row.role != food.role) continue;
    return row.cold ? Range{std::min(row.celsius.low, fridge_.low), std::max(row.celsius.high, fridge_.high)} : row.celsius;
  }
  return {freezer_.low, room_.high};
}

}  // namespace tamis::flow
