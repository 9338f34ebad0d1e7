#include "core/cli/question.h"

#include <algorithm>
#include <cmath>

namespace tamis::cli {
namespace {

using Lies = Question::Lies;
using physics::Shape;

constexpr double pi = 3.141592653589793;

/// Of the whole body where nothing else is known: a pan, a metre square.
double all_area(const Question& q) {
  const double top = q.volume > 0 ? q.volume / q.depth : 1;
  const double sides = q.volume > 0 ? 4 * std::sqrt(top) * q.depth : 0;
  return (q.one_face ? 1 : 2) * top + sides;
}

void set_stirred(const Question& q, physics::Piece& piece) {
  switch (q.lies) {
    case Lies::slab:
      piece.volume = q.volume > 0 ? q.volume : q.depth;
      piece.area = all_area(q);
      piece.open_area = q.volume > 0 ? q.volume / q.depth : 1;
      return;
    case Lies::cylinder: {
      const double top = pi * q.diameter * q.diameter / 4;
      const double depth = q.depth > 0 ? q.depth : 1;
      piece.volume = top * depth;
      piece.area = pi * q.diameter * depth + (q.depth > 0 ? (q.one_face ? 1 : 2) * top : 0);
      piece.open_area = q.depth > 0 ? top : 0;
      return;
    }
    case Lies::sphere:
      piece.volume = pi / 6 * std::pow(q.diameter, 3);
      piece.area = pi * q.diameter * q.diameter;
      return;
    case Lies::brick:
      piece.volume = q.depth * q.length * q.width;
      piece.area = 2 * q.depth * (q.length + q.width) + (q.one_face ? 1 : 2) * q.length * q.width;
      piece.open_area = q.length * q.width;
  }
}

}  // namespace

double Question::smallest() const {
  double out = 0;
  for (const double side : {depth, diameter, length, width})
    if (side > 0 && (out == 0 || side < out)) out = side;
  return out;
}

physics::Piece Question::piece() const {
  physics::Piece out;
  out.makeup = makeup;
  out.freezes_at = freezes.likely;
  const double upright = one_face ? depth : depth / 2;
  switch (lies) {
    case Lies::slab: out.body.parts = {{Shape::slab, upright}}; break;
    case Lies::brick: out.body.parts = {{Shape::slab, upright}, {Shape::slab, length / 2}, {Shape::slab, width / 2}}; break;
    case Lies::cylinder:
      out.body.parts = {{Shape::cylinder, diameter / 2}};
      if (depth > 0) out.body.parts = {{Shape::cylinder, diameter / 2}, {Shape::slab, upright}};
      break;
    case Lies::sphere: out.body.parts = {{Shape::sphere, diameter / 2}}; break;
  }
  out.stirred = stirred;
  out.inside = by_hand ? physics::stirred_film : physics::still_film;
  if (stirred) set_stirred(*this, out);
  return out;
}

}  // namespace tamis::cli
