#ifndef CORE_FLOW_AROUND_H
#define CORE_FLOW_AROUND_H

#include <optional>
#include <string_view>

#include "core/fiche/kitchen.h"
#include "core/physics/media.h"
#include "core/physics/predict.h"

namespace tamis::flow {

/// What a word or an id says that food stands in: the kitchen's own cold places and ovens by their id or kind (with the
/// temperature, the altitude's boiling point and the coefficient that it states), the media of core/physics/media.inc by theirs.
struct Around {
  const physics::Medium* medium = nullptr;
  physics::Exposure exposure;  ///< celsius NaN where it has to be said: an oven's
};
std::optional<Around> around_in(const fiche::Kitchen& kitchen, std::string_view word);

/// A figure as a range of itself.
inline physics::Range exactly(double value) { return {value, value, value}; }

}  // namespace tamis::flow

#endif
