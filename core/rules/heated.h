#ifndef CORE_RULES_HEATED_H
#define CORE_RULES_HEATED_H

#include <initializer_list>
#include <string_view>

#include "core/rules/rule.h"

namespace tamis::rules {

/// Whether the step does one of these: a word of its do; without a do, of the verbs that open its sentences.
bool does(const Check& check, int step, std::initializer_list<std::string_view> words);

/// Whether the step does one of these, or an earlier one that its food comes from.
bool done_before(const Check& check, int step, std::initializer_list<std::string_view> words);

/// Whether a step may heat food: one of its actions does, or is none that core/flow/actions.inc knows.
bool may_heat(const Check& check, int step);

/// Whether an earlier step that this one's food comes from may have heated what has such a food in it.
bool heated_before(const Check& check, int step, food::Role role);

/// Whether a later step may heat what this one makes.
bool heated_later(const Check& check, int step);

}  // namespace tamis::rules

#endif
