#ifndef CORE_RECORD_LOG_TIME_H
#define CORE_RECORD_LOG_TIME_H

#include <optional>
#include <string>
#include <string_view>

namespace tamis::record {

/// A moment as a log writes it.
struct Moment {
  enum class Kind : unsigned char { number, clock, date, date_and_clock } kind = Kind::number;
  double number = 0;         ///< of kind number
  double clock_seconds = 0;  ///< since midnight
  long day = 0;              ///< days since 1970-01-01, proleptic Gregorian
};

/// "75", "4.5", "4,5"; "10:15", "10:15:30", "1:05 PM"; "2026-11-03", "03.11.2026" (day first), "2026-11-03 10:15",
/// "2026-11-03T10:15:30Z". A zone is let be: a log keeps to one. Empty for what is none of these; "03/11/2026" is none: it can
/// be read two ways.
std::optional<Moment> read_moment(std::string_view text);

/// "2026-11-03".
std::string day_text(long day);

}  // namespace tamis::record

#endif
