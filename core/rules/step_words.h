#ifndef CORE_RULES_STEP_WORDS_H
#define CORE_RULES_STEP_WORDS_H

#include <functional>
#include <string>

#include "core/rules/rule.h"

namespace tamis::rules {

/// What a step's own sentence says, marks included and blocks (why, done, rescue, gate ...) left out. A use mark that
/// says how much it takes stands as U+0001 alone: "a little of it" is no riddle there.
const std::string& own_words(const Check& check, fiche::Node step);
const std::string& lower_words(const Check& check, fiche::Node step);  ///< the same in lower case

/// own_sentence() of core/rules/step_name.h. These three are read once for all rules that ask.
const std::string& own_sentence(const Check& check, fiche::Node step);

/// Calls on every mark of the step's own sentence, and of what it must wait for (gate, control); not of why, done,
/// rescue, notes or the short and the learner's wording, which speak of other things too.
void for_each_mark(const fiche::Document& document, fiche::Node step, const std::function<void(fiche::Node)>& call);

/// What a step says about when it is done.
struct Cues {
  bool cue = false;        ///< until, done, gate or control
  bool food_temp = false;  ///< a temperature of the food
  bool hot_place = false;  ///< a temperature of oven or medium, or a setting ("medium heat")
  bool gate_on_use = false;  ///< use/@at
  bool time = false;       ///< a time mark, or hands or unattended
  bool length = false;     ///< a length mark, or a time for a depth
  bool reduced = false;    ///< reduce-by, reduce-to or a share mark
};
Cues cues_of(const fiche::Document& document, fiche::Node step);

}  // namespace tamis::rules

#endif
