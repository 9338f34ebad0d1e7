#ifndef CORE_RULES_READINESS_H
#define CORE_RULES_READINESS_H

#include <string>

#include "core/rules/rule.h"

namespace tamis::rules {

/// How far a fiche has come, by fiche/@state. A state that is missing or unknown is a draft's.
enum class Readiness : unsigned char { draft, tested, released };
Readiness readiness_of(const fiche::Document& document);

/// Whether the rules of topics "sharing" and "teaching" have anything to ask: others see a tested or released fiche;
/// a draft is its author's own, and a kitchen file is no fiche.
bool is_shared(const Check& check);

/// Says it as loud as the fiche's state asks: advice on a tested fiche, a warning on a released one. For rules whose own
/// severity is advice; a severity that the kitchen has set stays.
base::Finding& say_to_share(Check& check, base::Span where, std::string message, std::string advice);

/// Where a finding about the fiche as a whole stands: its title.
base::Span place_of_fiche(const fiche::Document& document);

}  // namespace tamis::rules

#endif
