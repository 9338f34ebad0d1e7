#ifndef CORE_MEASURE_UNIT_READER_H
#define CORE_MEASURE_UNIT_READER_H

#include <cstddef>
#include <optional>
#include <string_view>

#include "core/base/finding.h"
#include "core/measure/read.h"

namespace tamis::measure {

/// What stands where a unit is expected.
struct UnitFound {
  std::size_t used = 0;        ///< bytes, with a stop after an abbreviation; 0: no known name
  const Unit* unit = nullptr;  ///< null with a fault: ambiguous-unit or wrong-kind, its span within the name
  std::optional<base::Finding> fault;
};

/// `in_sentence`: more may follow, so that a stop may end the sentence and "in" may be a preposition.
UnitFound scan_unit(std::string_view text, Kinds wanted, const Reading& reading, bool in_sentence);

/// The refusal of a word that is no unit, with the nearest known one. The word is what `text` starts with.
base::Finding unknown_unit(std::string_view text, Kinds wanted, const Reading& reading);

bool wants(Kinds wanted, Kind kind);
/// "mass, volume or count"
std::string kinds_text(Kinds wanted);

}  // namespace tamis::measure

#endif
