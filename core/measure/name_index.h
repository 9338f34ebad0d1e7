#ifndef CORE_MEASURE_NAME_INDEX_H
#define CORE_MEASURE_NAME_INDEX_H

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/measure/unit.h"

namespace tamis::measure {

/// One thing a name can mean. All entries of a key stand together, in the table's order.
struct NameEntry {
  std::string key;            ///< the name's normal form
  std::string_view spelled;   ///< as the table spells it
  std::string_view language;  ///< "" for all
  const Unit* unit = nullptr;
  bool usual = false;         ///< meant when no system is declared
  bool id = false;            ///< the unit's id, understood in every language
  bool one_letter = false;    ///< its case counts
  /// In a text of that language; names of one letter mean what their case says (T a tablespoon, t a teaspoon).
  [[nodiscard]] bool stands_for(std::string_view written, std::string_view in_language) const;
};

/// Lower case, one space for any run of space, stops as spaces: "c. à s." and "C à  S" become "c à s".
std::string normal_form(std::string_view text);

/// "en" of "en-US".
std::string primary_language(std::string_view tag);

/// What a text starts with, as far as it is a unit's name in the language (or an English one, or an id).
struct NameMatch {
  std::size_t used = 0;  ///< bytes, 0: none. Without a stop that follows.
  std::span<const NameEntry> entries;
};
NameMatch match_name(std::string_view text, std::string_view language);

/// Whether a name may be followed by a stop: abbreviations, whose last word has up to four letters.
bool takes_stop(std::string_view name);

/// Names that a text in the language may use for units of a kind in the set (bits as in read.h): its own first, then
/// those of all languages, then the English ones.
std::vector<std::string_view> names_for(unsigned kinds, std::string_view language);

/// Letter of a word (Latin), or digit.
bool is_letter(char32_t scalar);
bool is_digit(char32_t scalar);

/// Where words could end in the text's first `most` words: offsets just past a letter, digit or sign that is not
/// followed by another letter of the same word. Longest last. For looking up phrases of several words.
class WordEnds {
 public:
  explicit WordEnds(std::string_view text);
  [[nodiscard]] std::span<const std::size_t> ends() const { return {ends_, count_}; }

 private:
  static constexpr std::size_t most = 8;
  std::size_t ends_[most] = {};
  std::size_t count_ = 0;
};

}  // namespace tamis::measure

#endif
