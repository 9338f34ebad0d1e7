#ifndef CORE_FORMAT_DRAFT_YIELD_H
#define CORE_FORMAT_DRAFT_YIELD_H

#include <optional>
#include <vector>

#include "core/format/draft_recipe.h"

namespace tamis::format::draft {

/// "Serves 12", "Makes 16 pieces", "for a 20 cm ring, 4.5 cm high", "Pour 8 personnes": what the line says the recipe
/// makes. The line's own words stay beside the figures. Nothing when it is no such line.
std::optional<DraftYield> read_yield(const Desk& desk, base::Span line);

/// "Serves 12" and "for a 20 cm ring" are one yield; a second figure of one kind is another yield.
void add_yield(std::vector<DraftYield>& yields, DraftYield made);

}  // namespace tamis::format::draft

#endif
