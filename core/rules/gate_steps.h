#ifndef CORE_RULES_GATE_STEPS_H
#define CORE_RULES_GATE_STEPS_H

#include <optional>
#include <string>
#include <vector>

#include "core/rules/food_kinds.h"
#include "core/rules/heated.h"
#include "core/rules/stated_heat.h"

namespace tamis::rules {

/// Whether the step heats what it works on.
bool heats(const Check& check, int step);
/// Whether it heats in pan or bath, by its verbs, its place or its words, where it can be stirred: not in the oven, not in fat.
bool heats_in_the_pan(const Check& check, int step);
/// Whether it brings to the boil, or keeps boiling.
bool boils(const Check& check, int step);

/// Whether a step that takes what this one makes heats it: what comes after that is another matter.
bool heated_next(const Check& check, int step);

/// What a use takes, as its mark says it: "custard"; else by its name.
std::string name_of(const Check& check, const flow::Use& use);

/// The temperature that the step's uses come to when they meet, by the enthalpy balance; empty where the mass of one is
/// not known.
std::optional<flow::Range> comes_to(const Check& check, const std::vector<int>& uses);

/// The step's own words in lower case, its parts one behind the other.
const std::string& words_of(const Check& check, int step);

/// A stated temperature as the author has it, in °C too where it is not: "198 °F (92 °C)".
std::string said(const StatedHeat& heat);

/// Whether it is of one of several things that the step takes, and not of what comes of it: "the butter at 60 °C".
bool is_of_a_use(const Check& check, int step, const StatedHeat& heat);

/// "71 °C".
std::string degrees(double celsius);

/// Where the use's temperature is said: at its mark, else the mark itself.
base::Span heat_span_of(const Check& check, const flow::Use& use);

}  // namespace tamis::rules

#endif
