#ifndef CORE_RECORD_LOG_H
#define CORE_RECORD_LOG_H

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/finding.h"
#include "core/base/source.h"
#include "core/record/csv.h"

namespace tamis::record {

enum class Scale : unsigned char { unsaid, celsius, fahrenheit };

/// What the user says of a log that it does not say itself.
struct LogWish {
  Scale scale = Scale::unsaid;
  double number_seconds = 0;  ///< a bare number in the column of time is so many seconds each; 0: not said
  std::string column;         ///< which temperature, by its heading or its number; "" where there is one
  /// °C that the food of the fiche lies between; readings beyond that would fit on the other scale are held for that.
  double coldest = -8, hottest = 105;
};

struct Reading {
  double seconds = 0;  ///< since the first day's midnight, or since the log began
  double celsius = 0;
  base::Span where;     ///< of the temperature in the source
  bool parted = false;  ///< from the one before: a gap, or a row between them that could not be used
};

/// A thermometer's log as it was read: what can be used, and all that is wrong with it. Nothing is filled in, sorted or
/// smoothed: a row that cannot be used parts the log, and no verdict goes across.
struct Log {
  std::vector<Reading> readings;  ///< in the order of time
  bool by_clock = false;          ///< seconds count from midnight; else from when the logger began
  std::string day;                ///< of the first reading, "2026-11-03"; "" where the log has no date
  Scale scale = Scale::celsius;
  std::string column;                 ///< heading of the temperatures; "" without a heading
  std::size_t rows = 0;               ///< rows of readings, those that could not be used too
  bool by_hand = false;               ///< each reading was taken and timed when its limit was reached
  bool usable = false;                ///< false: nothing can be judged by it
  std::vector<base::Finding> faults;  ///< rules log-unreadable, log-out-of-order, log-gap, log-spike, log-wrong-scale
};
Log read_log(const Csv& table, const LogWish& wish);

/// °C of a figure on that scale; one that is not said is Celsius.
inline double celsius_of(double figure, Scale scale) { return scale == Scale::fahrenheit ? (figure - 32) / 1.8 : figure; }

/// "10:42", "10:42:30" by the clock, with "next day" behind where it is; else "1 h 12 min" since the log began.
std::string moment_text(const Log& log, double seconds);
/// "45 s", "6 min", "6 min 30 s", "2 h 5 min": whole seconds under ten minutes, else whole minutes, cut off.
std::string span_text(double seconds);
/// "63 °C", "62.8 °C": to a tenth.
std::string celsius_text(double celsius);
/// The same on the scale that was read: "145.4 °F".
std::string degrees_text(Scale scale, double celsius);
/// The scale of a figure's own words: "145 °F or higher"; Celsius where they name none.
Scale scale_of(std::string_view words);

}  // namespace tamis::record

#endif
