#ifndef CORE_MEASURE_ISO_DURATION_H
#define CORE_MEASURE_ISO_DURATION_H

#include <optional>
#include <string_view>

#include "core/measure/amount.h"

namespace tamis::measure {

/// An ISO 8601 duration of weeks, days, hours, minutes and seconds: "PT1H30M", "P1DT12H", "P2W", "PT0,5H". Years and
/// months have no fixed length and are not read. Empty when the text is none, or comes to nothing.
std::optional<Amount> read_iso_duration(std::string_view text);

}  // namespace tamis::measure

#endif
