#ifndef CORE_RULES_SOAKING_H
#define CORE_RULES_SOAKING_H

#include <string_view>

namespace tamis::rules {

/// Words of soaking gelatine, in en, fr, de, es, and of gelatine that needs none.
bool says_soaked(std::string_view lower_text);

}  // namespace tamis::rules

#endif
