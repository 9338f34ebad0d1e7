#ifndef TESTS_BENCH_HOUSE_RULES_H
#define TESTS_BENCH_HOUSE_RULES_H

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/base/finding.h"
#include "core/rules/rule.h"

namespace tamis::bench {

/// The settings of plugins/house-style that scripts/bench gives it.
struct HouseSettings {
  std::size_t title_letters = 60, step_words = 60;
  std::vector<std::string_view> units{"g", "kg", "ml", "l", "piece", "min", "h", "degc", "cm"};
  std::vector<std::string_view> verbs{"take", "lay"};
  std::vector<std::string_view> required{"yield", "keep"};
  std::vector<std::pair<std::string_view, std::string_view>> instead{{"until done", "what it looks like"},
                                                                     {"a bit of", "the amount"}};
};

/// The rules of plugins/house-style as one would write them in C++, titles in sentence form: what the plugin is held against.
/// The findings go to `check` in the order of the plugin's.
void run_house_rules(rules::Check& check, const HouseSettings& settings);

}  // namespace tamis::bench

#endif
