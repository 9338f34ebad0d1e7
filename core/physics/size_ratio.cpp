#include "core/physics/size_ratio.h"

#include <algorithm>
#include <optional>

#include "core/physics/plank.h"

namespace tamis::physics {
namespace {

/// The same with its slabs closed on one face: heat has all of the depth to go.
Body on_one_face(Body body) {
  for (Body::Part& part : body.parts)
    if (part.shape == Shape::slab) part.length *= 2;
  return body;
}

void widen(std::optional<Ends>& ends, double ratio) {
  if (!ends) ends = Ends{ratio, ratio};
  ends->low = std::min(ends->low, ratio);
  ends->high = std::max(ends->high, ratio);
}

/// `time(body, coefficient, conductivity)` of both bodies at every end.
template <class Time>
Ends over_all(const Body& from, const Body& to, const Passing& passing, Time time) {
  std::optional<Ends> out;
  const bool slab = from.parts.size() == 1 && to.parts.size() == 1 && from.parts.front().shape == Shape::slab;
  for (const double coefficient : {passing.coefficient.low, passing.coefficient.high}) {
    for (const double conductivity : {passing.conductivity.low, passing.conductivity.high}) {
      widen(out, time(to, coefficient, conductivity) / time(from, coefficient, conductivity));
      if (slab)
        widen(out, time(on_one_face(to), coefficient, conductivity) /
                       time(on_one_face(from), coefficient, conductivity));
    }
  }
  return *out;
}

}  // namespace

Ends size_ratio(const Body& from, const Body& to, const Passing& passing) {
  std::optional<Ends> out;
  for (const double share : {passing.share.low, passing.share.high}) {
    const Ends one =
        over_all(from, to, passing, [share](const Body& body, double coefficient, double conductivity) {
          return time_to(body, {1000, 1000, conductivity}, coefficient, share, Place::centre).value_or(0);
        });
    widen(out, one.low);
    widen(out, one.high);
  }
  return *out;
}

Ends freezing_ratio(const Body& from, const Body& to, const Passing& passing) {
  return over_all(from, to, passing, [](const Body& body, double coefficient, double conductivity) {
    return plank_time(body, 1000, 1, conductivity, coefficient, 0, -1);
  });
}

}  // namespace tamis::physics
