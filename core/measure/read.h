#ifndef CORE_MEASURE_READ_H
#define CORE_MEASURE_READ_H

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/measure/amount.h"

namespace tamis::measure {

/// How a text is to be read: by whom and where it was written.
struct Reading {
  std::string language = "en";    ///< BCP 47; decides unit names and the decimal sign
  System system = System::none;   ///< whose bare cup, pint, ounce, spoon; none: such a name is a finding
  char decimal = 0;               ///< '.' or ','; 0: what the language says (en point; fr, de, es comma)
};

/// Kinds that may stand here, as a set.
using Kinds = unsigned;
constexpr Kinds set_of(Kind kind) { return 1U << static_cast<unsigned>(kind); }
constexpr Kinds amount_kinds = set_of(Kind::mass) | set_of(Kind::volume) | set_of(Kind::count) | set_of(Kind::length);
constexpr Kinds temperature_kinds = set_of(Kind::temperature);
constexpr Kinds time_kinds = set_of(Kind::time);
constexpr Kinds length_kinds = set_of(Kind::length);

/// Reads a whole text as one amount of one of the wanted kinds. White space at the ends is let be; anything else that
/// is not understood is refused, never skipped and never guessed.
///
/// A refusal's span counts bytes of `text`. Its rule is one of
///   unknown-unit       advice names the nearest known word
///   ambiguous-unit     "cup" with no system declared
///   ambiguous-number   "1,500" where the language does not settle the comma; "1.500" in German-like text
///   wrong-kind         a good measure of another kind (message names both)
///   reversed-range     the first figure is the larger
///   unreadable-amount  anything else (no figure, trailing text, digits run on, overflow)
///   unknown-trade-word a word where a figure is expected that the table does not know
///
/// Numbers: 1 · 1.5 · 1,5 (fr de es) · 1/2 · 1 1/2 · 1-1/2 · 1½ · ½ · 1 ½ · thin or no-break space as thousands sign.
/// A bare number is a count when count is wanted. Ranges: - – — to, à, bis, a. "x or more/less/higher/lower".
base::Result<Amount> read_amount(std::string_view text, Kinds wanted, const Reading& reading);

inline base::Result<Amount> read_temperature(std::string_view text, const Reading& reading) {
  return read_amount(text, temperature_kinds, reading);
}
/// Also ISO 8601 ("PT1H30M"), "1 h 30", "1h30", "90 min", "1 hour 30 minutes", "overnight".
inline base::Result<Amount> read_duration(std::string_view text, const Reading& reading) {
  return read_amount(text, time_kinds, reading);
}

/// "12 × 20 in", "12 x 20 x 2 1/2 in", "36 cm": the lengths in order. Refuses as read_amount does.
base::Result<std::vector<Amount>> read_lengths(std::string_view text, const Reading& reading);

/// "1/2", "half", "a third", "3 %", "the rest", "125 g" (kinds mass, volume, count).
base::Result<Share> read_share(std::string_view text, const Reading& reading);

/// A plain number ("4", "1.5", "1/2"), with the language's decimal sign.
base::Result<base::Ratio> read_number(std::string_view text, const Reading& reading);

/// The longest start of `text` that reads as an amount of one of the wanted kinds, and how many bytes it takes;
/// used bytes 0 when there is none. For finding figures in a sentence. Never a bare number, unless count is wanted.
struct Found {
  Amount amount;
  std::size_t used = 0;
  /// Where nothing was found: why a figure that stands here cannot be read ("1 cup" with no system, "1,500 g").
  std::optional<base::Finding> fault;
};
Found find_amount(std::string_view text, Kinds wanted, const Reading& reading);

/// The unit a name stands for, in this language and system; refuses with unknown-unit or ambiguous-unit.
base::Result<const Unit*> read_unit(std::string_view name, const Reading& reading);

}  // namespace tamis::measure

#endif
