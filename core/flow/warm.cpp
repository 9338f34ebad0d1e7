#include "core/flow/warm.h"

#include <algorithm>

#include "core/flow/melting.h"

namespace tamis::flow {
namespace {

using Heat = Action::Heat;
using Reason = Why::Reason;

// Common practice, °C.
constexpr double hottest_pan = 250;         // beyond it fat burns
constexpr double hottest_frying = 200;      // fat to fry in, 160 to 190
constexpr double hottest_melting = 120;     // butter, before it browns
constexpr double melts_from = 28;           // gelatine, butter and chocolate begin to run
constexpr Range caramel{150, 200};          // sugar colours from 150, is black at 210
constexpr Range simmer_below_boil{-15, 0};  // against the boiling point
constexpr Range poaching{60, 95};           // what surrounds it: from fish to fruit
constexpr Range tempering{26, 55};          // chocolate, from seeded to melted out
constexpr double most_drift_k = 15;          // a pan of something hot in ten minutes off the heat, while the next is done
constexpr double coldest_unfrozen = -2;     // what is cooled or chilled is not meant to freeze
constexpr double friction_k = 10;           // knead, blend, roll; not beyond
constexpr double warmest_by_hand = 35;
constexpr double soaked_through_s = 20 * 60;  // pieces in a simmering pot have come to its heat

bool is_watery(const Matter& matter) { return matter[Constituent::water].low >= 0.25; }

/// By how much dissolved sugar can lift the boiling point: 60 % boils at about 103 °C, 75 % at 108 °C, 85 % at 118 °C
/// (common practice: syrup stages), the rest of what is dissolved by up to 2 K.
double lifted(const Matter& matter) {
  const double sugars = matter[Constituent::sugars].high / std::max(0.01, 1 - matter.off);
  const double water = std::max(0.0, matter[Constituent::water].low - matter.off);
  const double syrup = sugars <= 0 ? 0 : sugars / (sugars + water);
  return syrup <= 0.4 ? 2 : syrup <= 0.6 ? 4 : syrup <= 0.75 ? 9 : hottest_pan;
}

bool on_heat(std::string_view on) {
  return on.find("hob") != on.npos || on.find("bath") != on.npos || on.find("bain") != on.npos || on.find("kettle") != on.npos ||
         on.find("stove") != on.npos || on.find("range") != on.npos;
}

class Warm {
 public:
  Warm(Point& point, const Warming& warming) : point_(point), w_(warming) {}

  void run() {
    const Range before = point_.celsius;
    if (before.low > point_.heat.celsius && !std::isinf(before.low)) point_.heat = {before.low, 0};
    for (const Action* action : w_.doing.actions) act(*action);
    // Only what it names first may have been on the heat: it comes to something between.
    const bool a_part = w_.things > 1 && (w_.says.heats_a_part || joins_after_heating(w_.doing));
    if (a_part) point_.celsius = hull_of(before, point_.celsius);
    if (w_.says.medium && !acted_on_medium_) surround(*w_.says.medium, Reason::heated);
    const Range worked_out = point_.celsius;
    if (w_.says.food) settle(before, worked_out);
    if (w_.says.end) end(*w_.says.end);
    remember(worked_out);
    if (point_.celsius.low >= fat_is_melted_c) point_.solid = false;
    if (point_.celsius.high < fat_is_melted_c - 5) point_.solid = true;
  }

 private:
  void because(Reason reason) { point_.why_celsius = {reason, -1, w_.step}; }

  void set(const Range& celsius, Reason reason) {
    point_.celsius = celsius;
    because(reason);
  }
  void surround(const Range& around, Reason reason) { set(toward(point_.celsius, around), reason); }
  void up_to(double high, Reason reason) {
    set({point_.celsius.low, std::max(point_.celsius.high, high)}, reason);
  }

  // ---- what each action does
  void act(const Action& action) {
    if (in_oven() && action.heats() && action.heat != Heat::simmers) return bake();
    switch (action.heat) {
      case Heat::none:
        if (action.air == Action::Air::in && !on_heat(w_.on) && point_.celsius.high > w_.places.room().high) {
          surround(w_.says.room.value_or(w_.places.room()), Reason::waited);  // beaten, it cools
        }
        if (on_heat(w_.on) && !w_.places.cold(w_.on) && !w_.says.medium) up_to(hottest_inside(point_, w_.places), Reason::heated);
        return;
      case Heat::works:
        point_.celsius.high = std::max(point_.celsius.high, std::min(point_.celsius.high + friction_k, warmest_by_hand));
        if (!point_.why_celsius.any()) because(Reason::kneaded);
        return;
      case Heat::warms: return heat(action);
      case Heat::poaches: return in_hot_water(w_.says.medium.value_or(poaching));
      case Heat::simmers: return simmer();
      case Heat::boils: return boil();
      case Heat::bakes: return bake();
      case Heat::fries: return fry();
      case Heat::sugar: return caramelise();
      case Heat::either: return temper();
      case Heat::stands: return stand(w_.places.room());
      case Heat::cools: return stand(w_.places.room());
      case Heat::chills:
        stand(w_.places.fridge());
        point_.stored = true;
        return;
      case Heat::freezes:
        stand(w_.places.freezer(), true);
        point_.stored = true;
        return;
      case Heat::thaws: return stand(hull_of(w_.places.fridge(), w_.places.room()));
      case Heat::holds: return hold();
    }
  }

  [[nodiscard]] bool in_oven() const { return w_.on.find("oven") != w_.on.npos || w_.says.oven.has_value(); }

  void heat(const Action& action) {
    if (action.word == "melt") {
      point_.solid = false;
      set({std::max(point_.celsius.low, melts_from), std::max(point_.celsius.high, std::min(hottest_melting, hottest_inside(point_, w_.places)))}, Reason::heated);
      return;
    }
    up_to(hottest_inside(point_, w_.places), Reason::heated);
  }

  /// What is liquid is as hot as it says; pieces come to it.
  void in_hot_water(Range water) {
    if (w_.says.liquid) water = narrowed(water, *w_.says.liquid);
    acted_on_medium_ = true;
    const bool liquid = !w_.bath.water && w_.pieces < 0.3;
    const bool through = w_.seconds >= soaked_through_s;
    if (liquid || through) return set(water, Reason::heated);
    set({std::min(point_.celsius.low, water.low), std::max(water.high, point_.celsius.low)}, Reason::heated);
  }

  void simmer() {
    const Range& boils = w_.places.boiling();
    in_hot_water({boils.low + simmer_below_boil.low, boils.high + simmer_below_boil.high + (w_.bath.water ? 0 : lifted(point_.matter))});
  }
  void boil() {
    const Range& boils = w_.places.boiling();
    const double lift = w_.bath.water ? 0 : lifted(point_.matter);
    if (w_.bath.water || is_watery(point_.matter)) return in_hot_water({boils.low, std::min(hottest_pan, boils.high + lift)});
    up_to(hottest_pan, Reason::heated);
  }

  void bake() {
    double high = hottest_inside(point_, w_.places);
    if (w_.says.oven) high = std::min(high, w_.says.oven->high);
    up_to(high, Reason::oven);
  }
  void fry() {
    double high = is_watery(point_.matter) ? hottest_inside(point_, w_.places) : hottest_frying;
    if (w_.says.medium) high = std::min(high, std::max(w_.says.medium->high, point_.celsius.low));
    acted_on_medium_ = true;
    up_to(high, Reason::fat_heat);
  }
  void caramelise() {
    const Matter& matter = point_.matter;
    if (matter[Constituent::sugars].low < 0.4) return fry();
    set({std::max(point_.celsius.low, caramel.low), caramel.high}, Reason::sugar_heat);
  }

  /// Chocolate is tempered by itself; eggs are by what is stirred into them; anything else comes to the room.
  void temper() {
    const bool chocolate = (point_.roles & (1U << static_cast<unsigned>(food::Role::chocolate))) != 0;
    if (chocolate) {
      set(hull_of(tempering, point_.celsius), Reason::tempered);
      point_.solid = true;
    } else if (w_.things < 2) {
      stand(w_.says.room.value_or(w_.places.room()));
    }
  }

  void stand(const Range& usual, bool freezes = false) {
    const auto cold = w_.places.cold(w_.on);
    Range around = w_.says.medium ? *w_.says.medium : cold ? *cold : w_.says.room ? *w_.says.room : usual;
    acted_on_medium_ = true;
    if (std::isinf(around.low)) around.low = std::min(around.high, usual.low);
    if (std::isinf(around.high)) around.high = std::max(around.low, usual.high);
    if (!freezes) around = {std::max(around.low, coldest_unfrozen), std::max(around.high, coldest_unfrozen)};
    point_.stored = cold.has_value();
    surround(around, Reason::waited);
  }

  void hold() {
    if (const auto cold = w_.places.cold(w_.on)) {
      surround(*cold, Reason::waited);
      point_.stored = true;
    } else {
      surround(w_.says.medium.value_or(w_.places.room()), Reason::waited);
      acted_on_medium_ = true;
    }
  }

  // ---- what is stated
  void settle(const Range& before, const Range& worked_out) {
    const Range& stated = *w_.says.food;
    const bool exact = !std::isinf(stated.low) && !std::isinf(stated.high);
    point_.celsius = exact ? stated : bounded(narrowed(hull_of(before, worked_out), stated));
    point_.why_celsius = {};
    if (!exact) because(std::isinf(stated.low) ? Reason::waited : Reason::heated);
    if (w_.says.off_the_heat && !w_.says.cools_after) {
      point_.celsius = drifted(point_.celsius, w_.places.room());
      because(Reason::waited);
      return;
    }
    if (!w_.says.cools_after) return;
    const auto cold = w_.places.cold(w_.on);
    surround(cold ? *cold : cooling_place(), Reason::waited);
  }

  /// "Below 6 °C" does not mean frozen, nor "above 75 °C" charred.
  [[nodiscard]] Range bounded(Range celsius) const {
    if (std::isinf(celsius.low)) celsius.low = std::min(celsius.high, freezes() ? w_.places.freezer().low : coldest_unfrozen);
    if (std::isinf(celsius.high)) celsius.high = std::max(celsius.low, hottest_inside(point_, w_.places));
    return celsius;
  }

  [[nodiscard]] bool freezes() const {
    return std::any_of(w_.doing.actions.begin(), w_.doing.actions.end(), [](const Action* action) { return action->heat == Heat::freezes; });
  }

  [[nodiscard]] Range cooling_place() const {
    for (const Action* action : w_.doing.actions) {
      if (action->heat == Heat::chills) return w_.places.fridge();
      if (action->heat == Heat::freezes) return w_.places.freezer();
    }
    return w_.places.room();
  }

  void end(const Range& stated) {
    const bool exact = !std::isinf(stated.low) && !std::isinf(stated.high);
    point_.celsius = exact ? stated : bounded(narrowed(point_.celsius, stated));
    if (exact) point_.why_celsius = {};
  }

  // ---- the heat it has had
  void remember(const Range& worked_out) {
    double reached = std::max(worked_out.low, point_.celsius.low);
    if (w_.says.hottest) reached = std::max(reached, std::isinf(w_.says.hottest->low) ? reached : w_.says.hottest->low);
    if (w_.says.end) reached = std::max(reached, std::isinf(w_.says.end->low) ? reached : w_.says.end->low);
    if (std::isinf(reached)) return;
    double held = w_.says.held_s;
    if (held <= 0 && keeps_boiling()) held = w_.seconds;
    if (reached > point_.heat.celsius) {
      point_.heat = {reached, held};
    } else if (reached == point_.heat.celsius) {
      point_.heat.seconds += held;
    }
  }

  [[nodiscard]] bool keeps_boiling() const {
    return std::any_of(w_.doing.actions.begin(), w_.doing.actions.end(),
                       [](const Action* action) { return action->heat == Heat::boils || action->heat == Heat::simmers; });
  }

  Point& point_;
  const Warming& w_;
  bool acted_on_medium_ = false;
};

}  // namespace

void warm(Point& point, const Warming& warming) { Warm(point, warming).run(); }

double hottest_inside(const Point& point, const Places& places) {
  if (is_watery(point.matter)) return std::min(hottest_pan, places.boiling().high + lifted(point.matter));
  return point.matter[Constituent::water].high < 0.25 ? hottest_pan : open_end;
}

Range drifted(const Range& food, const Range& room) {
  return {food.low > room.low ? std::max(room.low, food.low - most_drift_k) : food.low,
          food.high < room.high ? std::min(room.high, food.high + most_drift_k) : food.high};
}

Range toward(const Range& food, const Range& around) { return hull_of(food, around); }

}  // namespace tamis::flow
