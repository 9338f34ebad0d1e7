#ifndef CORE_RULES_HEATING_H
#define CORE_RULES_HEATING_H

#include <string_view>

#include "core/rules/rule.h"
#include "core/rules/step_words.h"

namespace tamis::rules {

/// What must be said where food is cooked that way. Table: core/rules/heating.inc.
enum class HeatNeed : unsigned char { none, time, figure, oven };

/// How a step cooks: the most demanding word of its do; without a do, of the verbs that open its sentences.
struct Heating {
  HeatNeed need = HeatNeed::none;
  std::string_view word;       ///< "bake"
  bool depth_decides = false;  ///< how long it takes depends on how thick the food is
  bool in_oven = false;
};
Heating heating_of(const Check& check, const fiche::Step& step);

/// Whether the sentence names a heat without a mark: "over low heat", "gently", "in boiling water", "at 160 fan".
bool names_a_heat(const Check& check, const fiche::Step& step);

/// Whether the sentence says without a mark when to stop: "until brown", "reduce by half" (en, fr, de, es).
bool names_an_end(const Check& check, const fiche::Step& step);

/// Whether an earlier step of the same component, or a step that preheats anywhere before, has set the oven or the fat.
bool set_before(const Check& check, const fiche::Step& step);

}  // namespace tamis::rules

#endif
