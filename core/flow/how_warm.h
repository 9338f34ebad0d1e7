#ifndef CORE_FLOW_HOW_WARM_H
#define CORE_FLOW_HOW_WARM_H

#include <optional>
#include <string_view>

#include "core/flow/celsius.h"
#include "core/food/food.h"

namespace tamis::flow {

/// How warm a food is by one word of these: "softened", "water, warm", "cold". The last such word counts. `food` may be
/// null. Empty when none of them says anything of that food.
std::optional<Range> how_warm(std::string_view words, const food::Food* food, const fiche::Kitchen& kitchen);

}  // namespace tamis::flow

#endif
