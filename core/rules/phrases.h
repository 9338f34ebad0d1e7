#ifndef CORE_RULES_PHRASES_H
#define CORE_RULES_PHRASES_H

#include <string>
#include <string_view>
#include <vector>

#include "core/rules/rule.h"

namespace tamis::rules {

/// The sentences of a step's own words, in lower case, numbered as StatedHeat::sentence is; read once.
const std::vector<std::string>& sentences_of(const Check& check, fiche::Node step);

/// Where the phrase stands as whole words; npos when it does not.
std::size_t find_phrase(std::string_view lower_text, std::string_view phrase);

/// "soft ball|soft-ball": whether one of them stands there.
bool has_phrase(std::string_view lower_text, std::string_view phrases);

}  // namespace tamis::rules

#endif
