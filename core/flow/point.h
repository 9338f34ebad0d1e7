#ifndef CORE_FLOW_POINT_H
#define CORE_FLOW_POINT_H

#include <cmath>
#include <vector>

#include "core/flow/outside.h"
#include "core/flow/places.h"
#include "core/flow/states.h"

namespace tamis::flow {

/// What lies around the food and is not of it: the water it boils in, the fat it fries in.
struct Bath {
  bool water = false, fat = false;
};

/// A thing on one way through the recipe.
struct Point {
  double grams = std::numeric_limits<double>::quiet_NaN();  ///< by statement: as Flow::ways has it
  Matter matter;
  Range celsius{-open_end, open_end};
  bool solid = true;    ///< its fat may be set
  Bath bath;            ///< it is no food, but what food is cooked in
  bool stored = false;  ///< it stays in the cold place where its last step put it
  Why why_grams, why_shares, why_celsius;
  HeatHad heat;
  Action::Air air = Action::Air::keeps;
  std::optional<double> depth_mm;
  fiche::Node depth = fiche::none;
  fiche::Node vessel = fiche::none;
  unsigned roles = 0;
  food::Allergens sure = 0, assumed = 0, may = 0;
  bool allergens_open = false;

  [[nodiscard]] bool weighed() const { return !std::isnan(grams); }
};

/// The state of a point, and the hull of a state and one more point. `first`: there is none yet.
void widen(State& state, const Point& point, bool first);
/// What another file's state is worth here: of one gram.
Point point_of(const State& state);

/// A use on one way: so much of that.
struct Going {
  const Point* point = nullptr;
  double grams = 0;  ///< NaN when not known
  int thing = -1;
};
/// All of them together, in one vessel, at once. Grams are the sum, or not known. Of temperature see mix_celsius().
Point mix(const std::vector<Going>& goings, int step);

/// The temperature that they come to, by an enthalpy balance: sum of mass, specific heat and temperature, each within its
/// bounds. What may be solid in them (fat, ice) takes up between none and all of its heat of melting; what the vessel,
/// the air and dissolving take or give is left out.
struct MixedHeat {
  Range celsius{-open_end, open_end};
  bool solid = false;   ///< some of the fat in it may be set
  double melting_k = 0; ///< by how much melting may have cooled it
};
MixedHeat mix_celsius(const std::vector<Going>& goings);

/// J/(g K) at that temperature: Choi and Okos, by ASHRAE Handbook Refrigeration (2006) ch. 9, table 1. Bounds where the
/// composition has them.
Range specific_heat(const Matter& matter, double celsius);

/// What foods are when they come to hand, and what is known of them.
class Start {
 public:
  Start(const fiche::Fiche& fiche, const Flow& flow, fiche::Library& library, Chain& chain, const fiche::Fiche* around,
        fiche::Node around_component);
  /// Of every thing that no step makes; without grams.
  void read(std::vector<Point>& points);

 private:
  [[nodiscard]] Point of_ingredient(int thing);
  [[nodiscard]] Point of_food(int thing, std::string_view id, fiche::Node node);
  [[nodiscard]] Point from_file(int thing, fiche::Node node);
  [[nodiscard]] std::string_view food_of(int thing) const;
  void set_celsius(Point& point, const food::Food& food, int thing, fiche::Node node) const;

  const fiche::Fiche& fiche_;
  const Flow& flow_;
  fiche::Library& library_;
  Chain& chain_;
  const fiche::Fiche* around_;
  fiche::Node around_component_;
  Places places_;
};

/// read_states(), for a fiche that another one takes in with a component's overrides.
States read_states_within(const fiche::Fiche& fiche, const Flow& flow, fiche::Library& library, Chain& chain,
                          const fiche::Fiche* around, fiche::Node around_component);

}  // namespace tamis::flow

#endif
