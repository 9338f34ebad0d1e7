#ifndef CORE_CHANGE_SCALE_SENTENCE_H
#define CORE_CHANGE_SCALE_SENTENCE_H

#include "core/fiche/fiche.h"

namespace tamis::change {

/// In what a step says to do, its short and learner's wording included; not in a remark, gate or control point.
bool stands_in_sentence(const fiche::Document& document, fiche::Node mark);

/// Whether the sentence gives the amount for each of something, so that a larger batch has more of them: it says so
/// ("each", "per", "chaque"), the step serves or portions, or it is what one portion weighs.
bool is_for_each(const fiche::Fiche& fiche, fiche::Node mark, const measure::Amount& amount);

}  // namespace tamis::change

#endif
