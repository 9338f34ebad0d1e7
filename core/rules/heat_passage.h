#ifndef CORE_RULES_HEAT_PASSAGE_H
#define CORE_RULES_HEAT_PASSAGE_H

#include <string>
#include <vector>

#include "core/physics/predict.h"
#include "core/rules/rule.h"

namespace tamis::rules {

/// Food of a stated depth that a step cools, freezes, thaws or heats through to a stated temperature in a stated time, or that
/// waits out of the freezer for it. Every guess
/// leans to the quick side: both faces give their heat away, it starts at the nearer end of what is known, what may be thin
/// enough mixes itself.
struct HeatPassage {
  physics::Piece piece;
  physics::Exposure exposure;
  physics::Place place = physics::Place::mean;
  std::string in;     ///< "in a fridge"
  double depth = 0;   ///< m
  double from = 0, to = 0;  ///< °C
  double asked = 0;         ///< °C, as the fiche has it: what surrounds it may come only near
  double seconds = 0;       ///< the longest that is stated
  double spare = 1.15;      ///< how often quickest() must fit into that before anybody is told: what no model knows
  base::Span where;         ///< of the temperature it is to have; of the time, where that is only meant

  bool stands = false;      ///< it only waits, frozen, to be served or used: nobody lays it thinner
  bool known = true;        ///< what it is made of; else it is reckoned as mostly water
  [[nodiscard]] bool ice() const { return from < piece.freezes_at || to < piece.freezes_at; }
  /// The same food lying otherwise deep.
  [[nodiscard]] HeatPassage at_depth(double metres) const;
};

/// Those of a step; none where depth, food, medium, time or a temperature is not known.
std::vector<HeatPassage> heat_passages(const Check& check, int step);

/// Seconds by the quickest that the medium allows, cheaply: by two terms of the series, on a coarse grid where there is
/// ice. 0 where nothing is known of it, or it is never reached.
double quickest(const HeatPassage& passage);
/// Seconds as it is likely to go; 0 as above.
double likely(const HeatPassage& passage);
/// °C of its place after the stated time at the quickest.
double reached(const HeatPassage& passage);

}  // namespace tamis::rules

#endif
