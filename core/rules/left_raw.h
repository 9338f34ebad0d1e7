#ifndef CORE_RULES_LEFT_RAW_H
#define CORE_RULES_LEFT_RAW_H

#include <string>

#include "core/rules/rule.h"

namespace tamis::rules {

/// How hot an ingredient may come to be in all the steps that it goes through, °C: the highest that is stated or
/// that the mix may have; endless where a step heats it and no figure says how far, or nobody knows.
double hottest_of(const Check& check, int thing);

/// Whether a stated temperature of that much or more is held that long (s) in one of those steps.
bool is_held_at(const Check& check, int thing, double celsius, double seconds);
/// Whether one of those steps freezes it.
bool is_frozen_in(const Check& check, int thing);

/// The line's own words, its food's name and how it is prepared, in lower case.
std::string words_of_line(const Check& check, int thing);

}  // namespace tamis::rules

#endif
