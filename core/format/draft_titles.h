#ifndef CORE_FORMAT_DRAFT_TITLES_H
#define CORE_FORMAT_DRAFT_TITLES_H

#include <cstddef>
#include <map>
#include <string>
#include <vector>

#include "core/format/draft_lines.h"
#include "core/format/draft_recipe.h"

namespace tamis::format::draft {

inline constexpr std::size_t most_heading_words = 8;

/// A heading's own words, without "For the".
std::string heading_title(const Desk& desk, const Line& line);

/// The components of a recipe by what their headings call them.
class Titles {
 public:
  static constexpr std::size_t none = static_cast<std::size_t>(-1);

  explicit Titles(const Lexicon& lexicon) : lexicon_(lexicon) {}

  /// The component of that title; else the only one that shares the noun which names it; none when there is neither.
  [[nodiscard]] std::size_t find(const Recipe& recipe, const std::string& title) const;
  void remember(const Recipe& recipe, std::size_t component);

 private:
  [[nodiscard]] std::string head_stem(const std::string& title) const;

  const Lexicon& lexicon_;
  std::map<std::string, std::size_t> by_title_;              ///< by slug
  std::map<std::string, std::vector<std::size_t>> by_head_;  ///< by the noun of the title; two at most
};

}  // namespace tamis::format::draft

#endif
