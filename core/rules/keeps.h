#ifndef CORE_RULES_KEEPS_H
#define CORE_RULES_KEEPS_H

#include <optional>
#include <string>
#include <vector>

#include "core/flow/stated_time.h"
#include "core/rules/rule.h"

namespace tamis::rules {

/// Where food stands meanwhile.
enum class Store : unsigned char { dry, hot, fridge, freezer };

/// Something that the fiche keeps or holds: a keep, or a step that holds. At a temperature and for a time, where
/// it says so.
struct Kept {
  fiche::Node node = fiche::none;  ///< the keep or the step
  int step = -1;                   ///< the step that makes it; that holds it
  bool holds = false;              ///< a step
  Store store = Store::dry;
  const fiche::Statement* heat = nullptr;
  std::optional<double> low, high;  ///< of it, °C; an end that is not bounded is empty
  const fiche::Statement* time = nullptr;
  std::optional<flow::TimeRange> length;
  std::string words;  ///< all of its words, where, reheat and a control's action too, in lower case
};
/// All of the fiche, in order; those of which no step is known to make what is kept are left out. Worked out once
/// a check.
const std::vector<Kept>& keeps_of(const Check& check);

/// Thrown away in the end, or eaten at once: "what is left is thrown away".
bool says_thrown_away(std::string_view lower_text);

/// Put up in closed jars, dried, salted, or stored cold after all: something else than the cold keeps it, by its words.
bool keeps_otherwise(std::string_view lower_text);

/// The words of the fiche's cautions, in lower case.
const std::string& cautions_of(const Check& check);

}  // namespace tamis::rules

#endif
