#ifndef CORE_BASE_NEAREST_H
#define CORE_BASE_NEAREST_H

#include <cstddef>
#include <span>
#include <string_view>

namespace tamis::base {

/// Edits (insert, delete, replace, swap of neighbours: optimal string alignment) that turn `a` into `b`, counted in
/// Unicode scalars. Stops counting above `limit` and gives limit + 1.
std::size_t edit_distance(std::string_view a, std::string_view b, std::size_t limit);

/// The word nearest to what was typed, without regard to case; empty when none is near enough to be worth saying
/// (one edit for words up to four letters, two up to eight, three beyond). The first of several equally near.
std::string_view nearest(std::string_view typed, std::span<const std::string_view> words);

}  // namespace tamis::base

#endif
