#ifndef CORE_FORMAT_DRAFT_YIELD_H
#define CORE_FORMAT_DRAFT_YIELD_H

#include <optional>

#include "core/format/draft_recipe.h"

namespace tamis::format::draft {

/// "Serves 12", "Makes 16 pieces", "for a 20 cm ring, 4.5 cm high", "Pour 8 personnes": what the line says the recipe
/// makes. The line's own words stay beside the figures. Nothing when it is no such line.
std::optional<DraftYield> read_yield(const Desk& desk, base::Span line);

}  // namespace tamis::format::draft

#endif
