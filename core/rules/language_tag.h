#ifndef CORE_RULES_LANGUAGE_TAG_H
#define CORE_RULES_LANGUAGE_TAG_H

#include <string>
#include <string_view>

namespace tamis::rules {

/// What there is to say about a language tag.
struct TagVerdict {
  bool good = false;
  std::string meant;  ///< the tag that was most likely meant; "" when nothing is near
  bool sure = false;  ///< it may be put in without asking
};

/// Well-formed by RFC 5646, section 2.1 (grandfathered tags included), its first part two or three letters: longer
/// ones are reserved or unregistered, so a language's name ("english") was written instead.
TagVerdict judge_language_tag(std::string_view tag);

}  // namespace tamis::rules

#endif
