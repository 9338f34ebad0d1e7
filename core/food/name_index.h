#ifndef CORE_FOOD_NAME_INDEX_H
#define CORE_FOOD_NAME_INDEX_H

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/food/food.h"

namespace tamis::food {

/// Every name of every food, cut into word stems, so that the names that share words with a query are found
/// through the words. A few flat arrays: built at the first look-up, once, and never changed after.
class NameIndex {
 public:
  using NameId = std::uint16_t;
  using WordId = std::uint16_t;
  static constexpr WordId no_word = 0xFFFF;

  static const NameIndex& the();  ///< of the food table

  [[nodiscard]] const Food& food(NameId name) const { return *names_[name].food; }
  [[nodiscard]] std::string_view language(NameId name) const { return names_[name].language; }
  [[nodiscard]] std::string_view folded(NameId name) const;
  [[nodiscard]] std::size_t word_count(NameId name) const { return names_[name].words; }

  /// The word of that stem, or no_word.
  [[nodiscard]] WordId find(std::string_view stem) const;
  /// Names that hold the word, in the table's order, each once.
  [[nodiscard]] std::span<const NameId> names_with(WordId word) const;
  /// Words that a misspelt one may mean: all that lie as few edits away as the nearest does, at most one edit for
  /// stems up to four letters, two up to eight, three beyond. A figure has no near miss: 64 % is not 60 %.
  [[nodiscard]] std::vector<WordId> near(std::string_view stem) const;
  /// Names that read the same as these stems when written as one word: "corn starch" and "cornstarch".
  [[nodiscard]] std::vector<NameId> joined(const std::vector<std::string>& stems) const;

 private:
  struct Name {
    const Food* food;
    std::string_view language;
    std::uint32_t begin;  // of its folded text in texts_
    std::uint16_t length;
    std::uint16_t words;   // how many different ones
    std::uint32_t joined;  // hash of its stems in a row
  };
  struct Word {
    std::uint32_t begin;  // in texts_
    std::uint32_t length;
    std::uint32_t letters;  // a bit a letter: two words n edits apart differ in at most 2n of them
  };
  struct Use {
    WordId word;
    NameId name;
  };

  NameIndex();
  void add(const Food& food, std::string_view language, std::string_view name, std::vector<std::string>& stems);
  void add_all(const Food& food, std::string_view language, std::string_view names,
               std::vector<std::string>& stems);
  WordId word_of(const std::string& stem);
  void sort_uses();
  void hash_joined();
  [[nodiscard]] std::string_view text(const Word& word) const;

  std::string texts_;
  std::vector<Name> names_;
  std::vector<Word> words_;
  std::vector<Use> uses_;              // while building
  std::vector<std::uint32_t> starts_;  // of each word's names in holders_; one more at the end
  std::vector<NameId> holders_;
  std::vector<std::uint16_t> word_slots_;    // open addressing, place + 1; 0 is free
  std::vector<std::uint16_t> joined_slots_;  // likewise, several names of one text stand in a row
};

}  // namespace tamis::food

#endif
