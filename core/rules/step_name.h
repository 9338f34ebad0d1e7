#ifndef CORE_RULES_STEP_NAME_H
#define CORE_RULES_STEP_NAME_H

#include <string>

#include "core/fiche/document.h"

namespace tamis::rules {

/// A step as a cook would point at it: its first words in quotes, "Fold in the rye flour …". Its id where it has no
/// words.
std::string step_name(const fiche::Document& document, fiche::Node step);

/// The words of a step's own sentence with its marks; notes, gates, rescue and the like are left out. In lower case.
std::string own_sentence(const fiche::Document& document, fiche::Node step);

}  // namespace tamis::rules

#endif
