#ifndef CORE_FLOW_PLACES_H
#define CORE_FLOW_PLACES_H

#include <optional>
#include <string_view>

#include "core/flow/celsius.h"
#include "core/food/food.h"

namespace tamis::flow {

/// How warm it is where food stands, in °C. What the kitchen file does not say is common practice.
class Places {
 public:
  explicit Places(const fiche::Kitchen& kitchen);

  [[nodiscard]] const Range& room() const { return room_; }
  [[nodiscard]] const Range& fridge() const { return fridge_; }
  [[nodiscard]] const Range& freezer() const { return freezer_; }
  [[nodiscard]] const Range& boiling() const { return boiling_; }
  /// By a step's on: "fridge", "freezer", "blast-chiller", "ice", the id of the kitchen's own; empty for others.
  [[nodiscard]] std::optional<Range> cold(std::string_view on) const;
  /// A food as it comes to hand, where nothing says how warm it is.
  [[nodiscard]] Range store(const food::Food& food) const;

 private:
  const fiche::Kitchen& kitchen_;
  Range room_, fridge_, freezer_, boiling_;
};

}  // namespace tamis::flow

#endif
