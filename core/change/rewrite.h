#ifndef CORE_CHANGE_REWRITE_H
#define CORE_CHANGE_REWRITE_H

#include "core/change/work.h"

namespace tamis::change {

/// Writes every figure of the author's document in the wanted system, through the oven shifts and market swaps that
/// the work holds.
void rewrite_figures(Work& work);

}  // namespace tamis::change

#endif
