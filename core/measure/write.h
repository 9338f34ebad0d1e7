#ifndef CORE_MEASURE_WRITE_H
#define CORE_MEASURE_WRITE_H

#include <string>

#include "core/measure/amount.h"

namespace tamis::measure {

/// How figures are written for people.
struct Writing {
  std::string language = "en";  ///< BCP 47: en, en-US, en-GB, fr, de, es; decides decimal sign, unit names, spacing
  bool fractions = true;        ///< ½ rather than 0.5 for US and imperial volumes, ounces, inches, counts
  bool no_break = true;         ///< no-break spaces; false: ordinary ones, for text that a program reads
  int digits = 6;               ///< significant digits at most, where a value has no short decimal form
};

/// "1 ½ cup" as "1 ½ cups", "250 g", "1.2 kg", "1 lb 2 oz", "82–84 °C", "about 15 min", "at most 38 °C", "1 h 30 min",
/// with no-break spaces between figure and unit. read_amount with the same language and the unit's own system reads
/// it back to an equal amount, unless a value had to be cut to `digits`.
std::string write_amount(const Amount& amount, const Writing& writing);

/// A number alone: "1 ½", "0.25", "1,5".
std::string write_number(base::Ratio value, const Writing& writing);

/// ISO 8601 duration of an exact time: "PT1H30M".
std::string write_iso_duration(const Amount& time);

}  // namespace tamis::measure

#endif
