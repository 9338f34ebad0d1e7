#ifndef CORE_FLOW_STEP_SAYS_H
#define CORE_FLOW_STEP_SAYS_H

#include <optional>
#include <vector>

#include "core/flow/celsius.h"
#include "core/flow/flow.h"

namespace tamis::flow {

/// What a step says about heat, depth and vessel, in its sentence, its gates and its controls.
struct StepSays {
  /// The last temperature that its sentence says of what it works on; not of a surface, not of one thing it takes.
  std::optional<Range> food;
  fiche::Node food_mark = fiche::none;
  double held_s = 0;        ///< the longest that such a temperature is held for
  std::optional<Range> hottest;  ///< of those temperatures the highest
  bool cools_after = false;      ///< the words behind the last one go on to cool, or to work on off the heat
  bool off_the_heat = false;     ///< they end with taking it off the heat
  bool heats_after = false;      ///< they go on to heat
  bool heats_a_part = false;     ///< it may heat only what it names first: "boil the milk, pour it onto the yolks"
  std::optional<Range> end;      ///< what its gates and controls ask of what it makes, the last of them
  std::optional<Range> oven, medium, room;
  std::optional<Range> liquid;   ///< of what it poaches in: the syrup round the fruit
  std::optional<double> depth_mm;
  fiche::Node depth = fiche::none;
  fiche::Node vessel = fiche::none;  ///< the mould that a tool mark names
};

/// How warm a thing is said to be as it goes in.
struct GoingIn {
  std::optional<Range> celsius;
  bool figure = false;  ///< by a figure; else by words, which tell less than what is known of how it was made
};

/// Of one step. What it says of the things it takes goes to `uses` (by Flow::uses): use/@at, gates of them, words beside
/// them ("boiled", "softened"). `heats`: one of its actions does; `poaches`: a temperature of one thing it takes is then
/// that of what the others lie in.
StepSays read_step_says(const fiche::Fiche& fiche, const Flow& flow, const Step& step, bool heats, bool poaches,
                        std::vector<GoingIn>& uses);

/// The use that a temperature stands right behind, as an index into Flow::uses: "the melted butter at 60 °C", "the cream
/// (4 °C)"; -1 when it stands behind none.
int use_before(const fiche::Document& document, const Step& step, const Flow& flow, fiche::Node figure);

/// Whether its sentence puts a lid on: "cover and simmer", "under paper".
bool is_covered(const fiche::Document& document, fiche::Node step);

/// Whether something goes in by and by: its mark or the sentence says so ("in a thin stream", "a little at a time").
bool goes_in_gradually(const fiche::Fiche& fiche, const Flow& flow, int use);

}  // namespace tamis::flow

#endif
