#ifndef TESTS_DRAFT_WORDS_KEPT_H
#define TESTS_DRAFT_WORDS_KEPT_H

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <string_view>

#include "core/fiche/document.h"
#include "core/format/draft.h"
#include "core/format/draft_words.h"

namespace tamis::tests {

/// Words that become structure and need not stand in the fiche: section words, "for the" of a heading, what ties an
/// amount to its food, "optional", "day", "step", and the sign of "2 x 400 g". Taken from the draft's own table.
inline const std::set<std::string>& structure_words() {
  using format::draft::Set;
  struct Row {
    Set set;
    std::string_view language;
    std::string_view phrases;
  };
  static const Row rows[] = {
#define DRAFT_WORDS(set, language, phrases) {Set::set, language, phrases},
#include "core/format/draft_words.inc"
  };
  static const std::set<std::string> words = [] {
    std::set<std::string> out{"x"};
    const std::set<Set> structure{Set::section_ingredients, Set::section_method, Set::section_notes, Set::heading_for,
                                  Set::connective, Set::both, Set::optional, Set::day, Set::step_word};
    for (const Row& row : rows) {
      if (structure.count(row.set) == 0) continue;
      for (const format::draft::Word& word : format::draft::words_of(row.phrases)) out.insert(word.text);
    }
    return out;
  }();
  return words;
}

using WordCount = std::map<std::string, int>;

inline void count_words(WordCount& counts, std::string_view text) {
  for (const format::draft::Word& word : format::draft::words_of(text)) ++counts[word.text];
}

/// Words of all text and all attribute values below a node.
inline void count_below(const fiche::Document& document, fiche::Node node, WordCount& counts) {
  for (fiche::Attr a = document.first_attribute(node); a != fiche::none; a = document.next_attribute(a)) {
    count_words(counts, document.attribute_value(a));
  }
  for (fiche::Node c = document.first_child(node); c != fiche::none; c = document.next(c)) {
    if (document.kind(c) == fiche::NodeKind::element) count_below(document, c, counts);
  }
}

/// Typed words that are neither in the fiche nor in a question. `each_time`: as often as they were typed. The number
/// a line opens with is let be.
inline std::string lost_words(std::string_view typed, const format::Drafted& made, const fiche::Document& document,
                              bool each_time) {
  WordCount counts;
  count_words(counts, document.all_text(document.top()));
  count_below(document, document.top(), counts);
  for (const format::Question& question : made.questions) count_words(counts, question.words);
  std::string lost;
  for (std::size_t begin = 0; begin < typed.size();) {
    const std::size_t end = std::min(typed.find_first_of("\r\n", begin), typed.size());
    bool first = true;
    for (const format::draft::Word& word : format::draft::words_of(typed.substr(begin, end - begin))) {
      const bool structure = structure_words().count(word.text) > 0;
      const bool number = first && word.figure();
      first = first && structure;
      const auto found = counts.find(word.text);
      if (number || structure) continue;
      const bool kept = found != counts.end() && (each_time ? --found->second >= 0 : true);
      if (!kept) lost += " " + word.text;
    }
    begin = end + 1;
  }
  return lost;
}

}  // namespace tamis::tests

#endif
