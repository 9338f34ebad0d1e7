#ifndef CORE_RECORD_LOG_COLUMNS_H
#define CORE_RECORD_LOG_COLUMNS_H

#include <cstddef>
#include <optional>
#include <string>

#include "core/record/log.h"

namespace tamis::record {

/// Which columns of a log hold what.
struct LogColumns {
  std::size_t first_row = 0;  ///< of readings
  std::size_t time = 0, celsius = 0;
  std::optional<std::size_t> day;      ///< a column of dates beside that of times
  double number_seconds = 0;           ///< a bare number is so many seconds each; 0: not said
  Scale scale = Scale::unsaid;         ///< as the heading says
  std::string heading;                 ///< of the temperatures
  std::optional<base::Finding> fault;  ///< why they cannot be told; the others are empty then
};

/// By the heading (en, fr, de, es), which may stand below lines about the logger; without one, two columns are time and
/// temperature. What the user says of number_seconds and column comes first.
LogColumns find_columns(const Csv& table, const LogWish& wish);

/// A temperature as a cell has it: "63.2", "63,2 °C", "−4", "145 F".
struct Degrees {
  double value = 0;
  Scale scale = Scale::unsaid;
};
std::optional<Degrees> read_degrees(std::string_view text);

}  // namespace tamis::record

#endif
