#include <algorithm>

#include "core/flow/point.h"

namespace tamis::flow {
namespace {

/// How open the composition is that so much of it brings.
double openness(const Going& going) {
  double open = 0;
  for (const Range& part : going.point->matter.parts) open += part.width();
  const Matter& matter = going.point->matter;
  return going.grams * (open + matter.off + matter.gone + matter.took_water + matter.took_fat);
}

void bring_foods(Point& made, const Point& point) {
  made.roles |= point.roles;
  made.sure |= point.sure;
  made.assumed |= point.assumed;
  made.may |= point.may;
  made.allergens_open |= point.allergens_open;
}

/// The heat that everything in it has had; what counts as nothing has to have had it too.
void bring_heat(Point& made, const Point& point, bool first) {
  if (first || point.heat.celsius < made.heat.celsius) made.heat = point.heat;
  if (point.heat.celsius == made.heat.celsius) made.heat.seconds = std::min(made.heat.seconds, point.heat.seconds);
}

/// How much of each is not known: it is like something between them.
void between(Point& made, const std::vector<Going>& goings) {
  State hull;
  bool first = true;
  const bool nothing = std::all_of(goings.begin(), goings.end(), [](const Going& going) { return going.grams == 0; });
  for (const Going& going : goings) {
    if (going.grams == 0 && !nothing) continue;
    widen(hull, *going.point, first);
    first = false;
  }
  made.matter = hull.matter;
}

}  // namespace

Point mix(const std::vector<Going>& goings, int step) {
  Point made;
  made.grams = 0;
  const Going* widest = nullptr;
  const Going* unweighed = nullptr;
  bool first = true;
  for (const Going& going : goings) {
    bring_foods(made, *going.point);
    bring_heat(made, *going.point, first);
    first = false;
    if (going.point->air == Action::Air::in) made.air = Action::Air::in;
    made.grams += going.grams;
    if (std::isnan(going.grams) && unweighed == nullptr) unweighed = &going;
    if (going.point->why_shares.any() && (widest == nullptr || openness(going) > openness(*widest))) widest = &going;
  }
  if (!made.weighed()) {
    between(made, goings);
    made.why_grams = unweighed->point->why_grams;
    if (!made.why_grams.any()) made.why_grams = {Why::Reason::amount_unknown, unweighed->thing, step};
    made.why_shares = made.why_grams;
    return made;
  }
  if (made.grams <= 0) {
    if (goings.empty()) {
      made.matter = unknown_matter();
      made.why_shares = {Why::Reason::amount_unknown, -1, step};
    } else {
      between(made, goings);
    }
    return made;
  }
  if (widest != nullptr) made.why_shares = widest->point->why_shares;
  for (const Going& going : goings) {
    if (going.grams > 0) add(made.matter, going.point->matter, going.grams / made.grams);
    if (!made.why_grams.any()) made.why_grams = going.point->why_grams;
  }
  return made;
}

}  // namespace tamis::flow
