#ifndef CORE_MEASURE_NUMBER_H
#define CORE_MEASURE_NUMBER_H

#include <cstddef>
#include <optional>
#include <string_view>

#include "core/base/finding.h"
#include "core/base/ratio.h"

namespace tamis::measure {

/// The decimal sign of a language tag, by CLDR (from memory): comma in French, German and Spanish but for the
/// countries that write a point; point in all others.
char decimal_sign(std::string_view language);

/// How numbers are to be read.
struct NumberStyle {
  char decimal = '.';
  bool declared = false;      ///< the document says so, so that its other sign can only group thousands
  bool space_groups = true;   ///< "1 500" with an ordinary space is 1500
  bool word_groups = true;    ///< numbers as words, "two"
  std::string_view language;  ///< primary subtag
};

/// What a text starts with, as a number.
struct Number {
  std::size_t used = 0;  ///< bytes; 0: no number here
  base::Ratio value;
  bool bare = true;      ///< may stand without a unit
  std::optional<base::Finding> fault;  ///< digits that cannot be read: "1,500", "1,5", too many digits
};

/// 1 · 1.5 · .5 · 1/2 · 1 1/2 · 1-1/2 · 1½ · ½ · 1 ½ · 1 500 · two · half a. No sign in front.
Number scan_number(std::string_view text, const NumberStyle& style);

}  // namespace tamis::measure

#endif
