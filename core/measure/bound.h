#ifndef CORE_MEASURE_BOUND_H
#define CORE_MEASURE_BOUND_H

#include <string_view>

namespace tamis::measure {

/// Which way words that stand right before a figure bound it.
enum class Bound : unsigned char {
  none,     ///< they say nothing of it
  least,    ///< "at least", "above", "must not fall below"
  most,     ///< "at most", "below", "never goes above"
  unclear,  ///< "do not stop before it is above": a negation stands before them, and what it denies is not plain
};

/// By what the words end with, in phrases of core/measure/phrases.inc for that language or English: "stir, never above" a
/// figure is a most, "covered under paper, the core is at" none. A negation at most two words before a comparison turns it
/// round; farther off in the sentence, or behind "until" and the like, nobody can tell. "Up to" and "jusqu'à" say where to go,
/// and bound nothing here.
Bound bound_before(std::string_view words, std::string_view language);

}  // namespace tamis::measure

#endif
