#include "core/flow/how_warm.h"

#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include "core/base/utf8.h"
#include "core/measure/trade_word.h"

namespace tamis::flow {
namespace {

enum class Foods : unsigned char { any, wet, fat };

struct Word {
  std::string_view word;
  Foods foods = Foods::any;
  std::string_view trade;  ///< id of the trade word it is; "" where low and high say it
  Range celsius;
};

constexpr double boil = 1000;  // stands for the kitchen's boiling point

void add_words(std::vector<Word>& out, std::string_view names, const Word& like) {
  while (!names.empty()) {
    const std::size_t end = std::min(names.find('|'), names.size());
    Word word = like;
    word.word = names.substr(0, end);
    out.push_back(word);
    names.remove_prefix(std::min(end + 1, names.size()));
  }
}

/// Sorted by word; of one word the first line counts.
std::vector<Word> read_words() {
  std::vector<Word> out;
#define HOW_WARM(low, high, foods, words) add_words(out, words, {{}, Foods::foods, {}, {low, high}});
#include "core/flow/how_warm.inc"
  for (const std::string_view id : {"frozen", "fridge-cold", "tepid", "lukewarm", "just-below-boiling", "boiling"}) {
    for (const measure::TradeName& name : measure::names_of(*measure::trade_word_by_id(id))) {
      if (name.name.find(' ') == name.name.npos) add_words(out, name.name, {{}, Foods::any, id, {}});
    }
  }
  std::stable_sort(out.begin(), out.end(), [](const Word& a, const Word& b) { return a.word < b.word; });
  return out;
}

const Word* word_of(std::string_view word) {
  static const std::vector<Word> words = read_words();
  const auto found = std::lower_bound(words.begin(), words.end(), word,
                                      [](const Word& known, std::string_view wanted) { return known.word < wanted; });
  return found == words.end() || found->word != word ? nullptr : &*found;
}

bool said_of(Foods foods, const food::Food* food) {
  using food::Role;
  if (foods == Foods::any) return true;
  if (food == nullptr) return false;
  const bool wet = food->role == Role::liquid || food->role == Role::dairy || food->id == "water";
  return foods == Foods::wet ? wet : food->role == Role::fat;
}

bool separates(char c) { return std::string_view(" \t\n\r,;.()-").find(c) != std::string_view::npos; }

}  // namespace

std::optional<Range> how_warm(std::string_view words, const food::Food* food, const fiche::Kitchen& kitchen) {
  std::optional<Range> out;
  while (!words.empty()) {
    const auto* end = std::find_if(words.begin(), words.end(), separates);
    const std::string_view word = words.substr(0, static_cast<std::size_t>(end - words.begin()));
    words.remove_prefix(std::min(word.size() + 1, words.size()));
    if (word.size() < 3) continue;
    const Word* known = word_of(word);
    if (known == nullptr && word.front() >= 'A' && word.front() <= 'Z') known = word_of(base::lower(word));
    if (known == nullptr || !said_of(known->foods, food)) continue;
    if (!known->trade.empty()) {
      if (const auto meant = celsius_of_word(known->trade, kitchen)) out = *meant;
    } else {
      out = known->celsius;
      if (out->high >= boil) out->high = boiling_in(kitchen).high;
    }
  }
  return out;
}

}  // namespace tamis::flow
