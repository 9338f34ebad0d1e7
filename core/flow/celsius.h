#ifndef CORE_FLOW_CELSIUS_H
#define CORE_FLOW_CELSIUS_H

#include <limits>
#include <optional>

#include "core/fiche/fiche.h"
#include "core/flow/matter.h"

namespace tamis::flow {

/// An end of a temperature that nothing bounds.
constexpr double open_end = std::numeric_limits<double>::infinity();

/// What a stated temperature means, in °C: "82–84 °C", "at most 38 °C" (no lower end); a word of the trade by the
/// house's meaning, else by the usual one; "boiling" at the kitchen's height. "About" gives 2 °C either way (common
/// practice). Empty for what could not be read or has no meaning ("hot").
std::optional<Range> celsius_meant(const fiche::Statement& statement, const fiche::Kitchen& kitchen);
std::optional<Range> celsius_of_word(std::string_view id, const fiche::Kitchen& kitchen);

/// Where water boils in that kitchen, in °C, with what weather does to it; at the sea where it does not say how high.
Range boiling_in(const fiche::Kitchen& kitchen);

/// Both together; where they leave nothing, the second, which is stated.
Range narrowed(const Range& known, const Range& stated);
/// From the lower of both to the higher.
Range hull_of(const Range& a, const Range& b);

}  // namespace tamis::flow

#endif
