#ifndef CORE_BASE_SAYS_H
#define CORE_BASE_SAYS_H

#include <initializer_list>
#include <string_view>

namespace tamis::base {

/// Whether the text holds one of these, each at the start of a word.
bool says(std::string_view lower_text, std::initializer_list<std::string_view> words);

}  // namespace tamis::base

#endif
