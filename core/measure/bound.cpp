#include "core/measure/bound.h"

#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include "core/base/utf8.h"
#include "core/measure/name_index.h"
#include "core/measure/phrase.h"

namespace tamis::measure {
namespace {

constexpr std::size_t most_words = 5;       // of a phrase: "au-dessus de" and the like have fewer
constexpr std::size_t words_between = 2;    // of a negation and what it denies: "not be kept below"
constexpr std::string_view stops = ".;!?|";  // a sentence ends

constexpr std::array negations{std::string_view("not"),  std::string_view("never"), std::string_view("no"),   std::string_view("without"),
                               std::string_view("cannot"), std::string_view("ne"),  std::string_view("pas"),  std::string_view("jamais"),
                               std::string_view("sans"), std::string_view("nicht"), std::string_view("nie"),  std::string_view("niemals"),
                               std::string_view("kein"), std::string_view("keine"), std::string_view("ohne"), std::string_view("nunca"),
                               std::string_view("sin")};
/// Behind these a negation denies the doing, not the figure.
constexpr std::array until{std::string_view("until"), std::string_view("till"),  std::string_view("before"), std::string_view("unless"),
                           std::string_view("avant"), std::string_view("jusqu'à"), std::string_view("bevor"), std::string_view("bis"),
                           std::string_view("antes"), std::string_view("hasta")};

template <class List>
bool is_one_of(std::string_view word, const List& list) {
  return std::find(list.begin(), list.end(), word) != list.end();
}
bool is_negation(std::string_view word) { return is_one_of(word, negations) || word.ends_with("n't") || word.ends_with("n’t"); }

/// The words of the last sentence, each with what stands behind it up to the next.
std::vector<std::string_view> last_sentence(std::string_view text) {
  for (std::size_t at = text.size(); at > 0; --at) {  // "180. " ends a sentence, "1.5" does not
    if (stops.find(text[at - 1]) == stops.npos || (at < text.size() && text[at] != ' ' && text[at] != '\n')) continue;
    text.remove_prefix(at);
    break;
  }
  std::vector<std::string_view> out;
  while (!(text = base::trimmed(text)).empty()) {
    const std::size_t end = std::min(text.find_first_of(" \t\r\n,:("), text.size());
    if (end > 0) out.push_back(text.substr(0, end));
    text.remove_prefix(std::min(std::max<std::size_t>(end, 1), text.size()));
  }
  return out;
}

/// Whether a phrase of the role takes the whole text.
bool is_phrase(std::string_view text, PhraseRole role, std::string_view language) {
  return match_phrase(text, role, language) == text.size() || match_phrase(text, role, "en") == text.size();
}

/// Of "above" and "less than", which a negation turns round; "at least" it does not.
bool is_comparison(std::string_view phrase) {
  constexpr std::array plain{std::string_view("minimum"), std::string_view("maximum"), std::string_view("max"), std::string_view("maximal"),
                             std::string_view("mínimo"), std::string_view("máximo"), std::string_view("máx"), std::string_view("at "),
                             std::string_view("au "), std::string_view("al "), std::string_view("por lo"), std::string_view("como"),
                             std::string_view("mindestens"), std::string_view("wenigstens"), std::string_view("höchstens"),
                             std::string_view("tout au"), std::string_view("a lo"), std::string_view("a minimum"), std::string_view("a maximum")};
  return std::none_of(plain.begin(), plain.end(), [phrase](std::string_view start) { return phrase.starts_with(start); });
}

struct Ending {
  Bound bound = Bound::none;
  std::size_t first = 0;  ///< word of the sentence that the phrase begins with
  std::string phrase;
};

Ending ending_of(const std::vector<std::string_view>& words, std::string_view language) {
  for (std::size_t first = words.size() - std::min(words.size(), most_words); first < words.size(); ++first) {
    std::string phrase;
    for (std::size_t i = first; i < words.size(); ++i) phrase.append(phrase.empty() ? "" : " ").append(words[i]);
    if (is_phrase(phrase, PhraseRole::to, language)) continue;  // "up to": where it is to go
    if (is_phrase(phrase, PhraseRole::at_least, language)) return {Bound::least, first, phrase};
    if (is_phrase(phrase, PhraseRole::at_most, language)) return {Bound::most, first, phrase};
  }
  return {};
}

}  // namespace

Bound bound_before(std::string_view text, std::string_view tag) {
  const std::string language = primary_language(tag);
  const std::string lower = base::lower(text);
  const std::vector<std::string_view> words = last_sentence(lower);
  const Ending ending = ending_of(words, language);
  if (ending.bound == Bound::none || !is_comparison(ending.phrase) || is_negation(words[ending.first])) return ending.bound;
  const Bound turned = ending.bound == Bound::least ? Bound::most : Bound::least;
  for (std::size_t back = 1; back <= ending.first; ++back) {
    const std::string_view word = words[ending.first - back];
    if (is_one_of(word, until)) break;
    if (is_negation(word)) return back <= words_between + 1 ? turned : Bound::unclear;
  }
  const bool denied = std::any_of(words.begin(), words.begin() + static_cast<std::ptrdiff_t>(ending.first), is_negation);
  return denied ? Bound::unclear : ending.bound;
}

}  // namespace tamis::measure
