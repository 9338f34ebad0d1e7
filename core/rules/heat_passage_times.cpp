// How long a passage of heat takes, and how far it gets.

#include <algorithm>
#include <cmath>

#include "core/physics/grid.h"
#include "core/rules/heat_passage.h"

namespace tamis::rules {
namespace {

const physics::Grid coarse{20, 0.04};  // within some percent of the fine one

/// One temperature and one coefficient.
physics::Exposure only(double celsius, double coefficient) {
  return {{celsius, celsius, celsius}, {coefficient, coefficient, coefficient}, {0, 0, 0}};
}

double quick_medium(const HeatPassage& p) {
  return p.to < p.from ? p.exposure.celsius.low : p.exposure.celsius.high;
}

physics::Course course_of(const HeatPassage& p, double medium, double coefficient, double to) {
  const auto substance = physics::substance_of(p.piece.makeup, p.piece.freezes_at, std::max({p.from, p.to, 0.0}));
  return physics::course(p.piece.body, substance, coefficient, p.from, medium, to, p.place, coarse);
}

}  // namespace

HeatPassage HeatPassage::at_depth(double metres) const {
  HeatPassage out = *this;
  out.depth = metres;
  out.piece.body.parts = {{physics::Shape::slab, metres / 2}};
  out.piece.volume = metres;  // of a square metre
  out.piece.area = 2;
  out.piece.open_area = 1;
  return out;
}

double quickest(const HeatPassage& p) {
  if (p.ice()) return course_of(p, quick_medium(p), p.exposure.coefficient.high, p.to).seconds.value_or(0);
  const auto bounds = physics::screen(p.piece, p.exposure, p.from, p.to, p.place);
  return bounds ? bounds->low : 0;
}

double likely(const HeatPassage& p) {
  const double medium = p.exposure.celsius.likely, coefficient = p.exposure.coefficient.likely;
  if (p.ice()) return course_of(p, medium, coefficient, p.to).seconds.value_or(0);
  const auto bounds = physics::screen(p.piece, only(medium, coefficient), p.from, p.to, p.place);
  return bounds && std::isfinite(bounds->high) ? (bounds->low + bounds->high) / 2 : 0;
}

double reached(const HeatPassage& p) {
  const double medium = quick_medium(p), coefficient = p.exposure.coefficient.high;
  if (!p.ice())
    return physics::warmth_after(p.piece, only(medium, coefficient), p.from, p.seconds, p.place).likely;
  double before = p.from;
  for (const auto& [seconds, celsius] : course_of(p, medium, coefficient, p.to).points) {
    if (seconds > p.seconds) break;
    before = celsius;
  }
  return before;
}

}  // namespace tamis::rules
