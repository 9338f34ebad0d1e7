#include "core/format/draft_actions.h"

#include <algorithm>
#include <map>
#include <vector>

namespace tamis::format::draft {
namespace {

struct Row {
  std::string_view word;
  std::string_view language;
  std::string_view verbs;
  bool opening;
};

constexpr Row rows[] = {
#define DRAFT_ACTION(word, language, verbs) {word, language, verbs, false},
#define DRAFT_OPENING(word, language, verbs) {word, language, verbs, true},
#include "core/format/draft_actions.inc"
};

struct Verb {
  std::vector<std::string> words;
  const Row* row;
};
using Verbs = std::multimap<std::string, Verb, std::less<>>;  // by first word

Verbs verbs_of(std::string_view language) {
  Verbs verbs;
  for (const Row& row : rows) {
    if (row.language != language) continue;
    for (std::string_view rest = row.verbs; !rest.empty();) {
      const std::size_t end = std::min(rest.find('|'), rest.size());
      Verb verb{{}, &row};
      for (const Word& word : words_of(rest.substr(0, end))) verb.words.push_back(word.text);
      rest.remove_prefix(std::min(end + 1, rest.size()));
      std::string first = verb.words.front();
      verbs.emplace(std::move(first), std::move(verb));
    }
  }
  return verbs;
}

const Verbs& verbs_in(std::string_view language) {
  static const Verbs english = verbs_of("en");
  static const Verbs french = verbs_of("fr");
  static const Verbs german = verbs_of("de");
  static const Verbs spanish = verbs_of("es");
  if (language == "fr") return french;
  if (language == "de") return german;
  return language == "es" ? spanish : english;
}

bool starts_here(const Verb& verb, std::span<const Word> words, std::size_t at) {
  if (at + verb.words.size() > words.size()) return false;
  for (std::size_t i = 1; i < verb.words.size(); ++i) {
    if (words[at + i].text != verb.words[i] || words[at + i].opens_sentence) return false;
  }
  return true;
}

bool ends_ly(std::string_view word) { return word.size() > 4 && word.substr(word.size() - 2) == "ly"; }

/// A clause opens here: behind punctuation, "and", "then", "to", or an adverb that stands there itself.
bool opens_clause(const Lexicon& lexicon, std::span<const Word> words, std::size_t at) {
  if (at == 0 || words[at].opens_clause) return true;
  const std::string& before = words[at - 1].text;
  if (ends_ly(before)) return at == 1 || opens_clause(lexicon, words, at - 1);
  return before == "and" || before == "n" || before == "then" || before == "to" || before == "or";
}

struct PlaceRow {
  Set set;
  std::string_view place;
};
constexpr PlaceRow places[] = {{Set::place_oven, "oven"},
                               {Set::place_hob, "hob"},
                               {Set::place_fridge, "fridge"},
                               {Set::place_freezer, "freezer"},
                               {Set::place_mixer, "mixer"}};

std::string_view place_at(const Lexicon& lexicon, std::span<const Word> words, std::size_t at) {
  for (const PlaceRow& row : places) {
    const std::size_t used = lexicon.match(row.set, words, at);
    if (used == 0) continue;
    const Action action = action_at(lexicon, words, at);
    // A verb's word ("bake", "freeze") says where only when it is the verb.
    if (row.set == Set::place_oven && words[at].text == "roast" && action.words == 0) continue;
    return row.place;
  }
  return {};
}

void add_word(std::string& list, std::string_view word) {
  const std::string padded = " " + list + " ";
  if (padded.find(" " + std::string(word) + " ") != std::string::npos) return;
  if (!list.empty()) list += ' ';
  list += word;
}

}  // namespace

Action action_at(const Lexicon& lexicon, std::span<const Word> words, std::size_t at) {
  const Verbs& verbs = verbs_in(lexicon.language());
  Action best;
  const auto [first, last] = verbs.equal_range(words[at].text);
  for (auto it = first; it != last; ++it) {
    const Verb& verb = it->second;
    if (verb.words.size() <= best.words || !starts_here(verb, words, at)) continue;
    if (verb.row->opening && !opens_clause(lexicon, words, at)) continue;
    if (at > 0 && !words[at].opens_clause && lexicon.match(Set::article_before_verb, words, at - 1) == 1) continue;
    // "Cream the butter", but "with milk and cream".
    const bool noun = verb.words.size() == 1 && lexicon.match(Set::same_word_verb, words, at) == 1 &&
                      lexicon.match(Set::determiner, words, at + 1) == 0;
    if (noun) continue;
    best = {verb.row->word, verb.words.size()};
  }
  return best;
}

void find_actions(const Desk& desk, DraftStep& step) {
  for (std::size_t i = 0; i < step.words.size();) {
    if (const std::string_view place = place_at(desk.lexicon, step.words, i); !place.empty()) {
      add_word(step.place, place);
    }
    const Action action = action_at(desk.lexicon, step.words, i);
    if (action.words > 0) add_word(step.actions, action.word);
    i += std::max<std::size_t>(1, action.words);
  }
}

}  // namespace tamis::format::draft
