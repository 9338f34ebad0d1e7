#include "core/rules/vague_words.h"

#include <algorithm>
#include <bitset>
#include <map>
#include <utility>
#include <vector>

#include "core/base/utf8.h"
#include "core/food/food.h"

namespace tamis::rules {
namespace {

enum class Kind : unsigned char { until, state, keeps, usual, some, definite };
struct Row {
  Kind kind;
  std::string_view language;
  std::string_view words;
};
constexpr Row rows[] = {
#define VAGUE(kind, language, words) {Kind::kind, language, words},
#include "core/rules/vague_words.inc"
#undef VAGUE
};

bool is_letter(char c) {
  const auto byte = static_cast<unsigned char>(c);
  return (byte >= 'a' && byte <= 'z') || byte >= 0x80 || (byte >= '0' && byte <= '9');
}

/// The phrases of a kind in a language, and the bytes that one of them begins with.
struct Phrases {
  std::vector<std::string_view> list;
  std::bitset<256> begins;
};

const Phrases& phrases(Kind kind, std::string_view language) {
  using Key = std::pair<Kind, std::string_view>;
  static const std::map<Key, Phrases> table = [] {
    std::map<Key, Phrases> made;
    for (const Row& row : rows) {
      Phrases& of = made[{row.kind, row.language}];
      for (std::size_t at = 0; at < row.words.size();) {
        const std::size_t end = std::min(row.words.find('|', at), row.words.size());
        of.list.push_back(row.words.substr(at, end - at));
        of.begins.set(static_cast<unsigned char>(row.words[at]));
        at = end + 1;
      }
    }
    return made;
  }();
  static const Phrases none;
  const auto found = table.find({kind, language.substr(0, 2)});
  return found == table.end() ? none : found->second;
}

/// Bytes that the longest phrase takes at this place, where it ends as a word ends; 0 for none.
std::size_t phrase_at(std::string_view text, const Phrases& phrases) {
  if (text.empty() || !phrases.begins[static_cast<unsigned char>(text.front())]) return 0;
  std::size_t best = 0;
  for (const std::string_view phrase : phrases.list) {
    if (phrase.front() != text.front() || !text.starts_with(phrase)) continue;
    const bool whole = text.size() == phrase.size() || phrase.ends_with('\'') || !is_letter(text[phrase.size()]);
    if (whole) best = std::max(best, phrase.size());
  }
  return best;
}

std::size_t phrase_at(std::string_view text, Kind kind, std::string_view language) {
  return phrase_at(text, phrases(kind, language));
}

bool starts_word(std::string_view text, std::size_t at) {
  return is_letter(text[at]) && (at == 0 || !is_letter(text[at - 1]));
}

std::size_t word_end(std::string_view text, std::size_t at) {
  while (at < text.size() && is_letter(text[at])) ++at;
  return at;
}

/// Past blanks and apostrophes to the next word; npos where a stop of any kind comes first.
std::size_t next_word(std::string_view text, std::size_t at) {
  while (at < text.size() && (text[at] == ' ' || text[at] == '\n' || text[at] == '\'')) ++at;
  return at < text.size() && is_letter(text[at]) ? at : std::string_view::npos;
}

/// Past a German verb: "fertig ist".
std::size_t behind_verb(std::string_view text, std::size_t at) {
  const std::size_t next = next_word(text, at);
  if (next == text.npos) return at;
  const std::size_t end = word_end(text, next);
  const std::string_view word = text.substr(next, end - next);
  return word == "ist" || word == "sind" ? end : at;
}

/// Where a clause ends: a stop, the end, or a word that begins another action.
bool clause_ends(std::string_view text, std::size_t at) {
  const std::size_t next = next_word(text, at);
  if (next == text.npos) return true;
  const std::string_view word = text.substr(next, word_end(text, next) - next);
  return word == "and" || word == "then" || word == "et" || word == "puis" || word == "und" || word == "y";
}

/// Where a state stands at or behind `at`, at most four words on, and ends the clause; 0 for none.
std::size_t state_behind(std::string_view text, std::size_t at, std::string_view language) {
  for (int words = 0; words <= 4; ++words) {
    at = next_word(text, at);
    if (at == text.npos) return 0;
    const std::size_t used = phrase_at(text.substr(at), Kind::state, language);
    const std::size_t end = used == 0 ? 0 : behind_verb(text, at + used);
    if (used > 0 && clause_ends(text, end)) return end;
    at = word_end(text, at);
  }
  return 0;
}

/// The sentence around a place.
std::string_view sentence_at(std::string_view text, std::size_t at) {
  const std::size_t before = text.substr(0, at).find_last_of(".;");
  const std::size_t begin = before == text.npos ? 0 : before + 1;
  return text.substr(begin, std::min(text.find_first_of(".;", at), text.size()) - begin);
}

/// The first place from `at` on where a word begins one of the phrases, and the bytes it takes; 0 bytes for none.
struct Found {
  std::size_t at = 0;
  std::size_t size = 0;
};
Found find_phrase(std::string_view text, const Phrases& phrases, std::size_t at = 0) {
  for (; at < text.size(); ++at) {
    if (!phrases.begins[static_cast<unsigned char>(text[at])] || !starts_word(text, at)) continue;
    const std::size_t size = phrase_at(text.substr(at), phrases);
    if (size > 0) return {at, size};
  }
  return {};
}

bool has_phrase(std::string_view text, Kind kind, std::string_view language) {
  return find_phrase(text, phrases(kind, language)).size > 0;
}

bool is_food(std::string_view name, std::string_view language) {
  const std::vector<food::Match> found = food::look_up(name, language.substr(0, 2), 1);
  return !found.empty() && (found[0].how == food::Match::How::exact || found[0].how == food::Match::How::variant);
}

/// Where a food's name ends that begins within three words of here; 0 for none.
std::size_t food_behind(std::string_view text, std::size_t at, std::string_view language) {
  for (int words = 0; words < 3; ++words) {
    at = next_word(text, at);
    if (at == text.npos || phrase_at(text.substr(at), Kind::definite, language) > 0) return 0;
    const std::size_t end = word_end(text, at);
    if (is_food(text.substr(at, end - at), language)) return end;
    at = end;
  }
  return 0;
}

}  // namespace

std::optional<VagueWords> until_without_picture(std::string_view words, std::string_view language) {
  const std::string text = base::lower(words);
  const Phrases& untils = phrases(Kind::until, language);
  for (Found until = find_phrase(text, untils); until.size > 0; until = find_phrase(text, untils, until.at + 1)) {
    const std::size_t end = state_behind(text, until.at + until.size, language);
    if (end > 0 && !has_phrase(sentence_at(text, until.at), Kind::keeps, language)) return VagueWords{until.at, end};
  }
  return {};
}

bool is_no_picture(std::string_view until, std::string_view language) {
  const std::string text = base::lower(base::trimmed(until));
  const std::size_t end = state_behind(text, phrase_at(text, Kind::until, language), language);
  return end > 0 && next_word(text, end) == std::string::npos;
}

std::optional<VagueWords> leans_on_habit(std::string_view words, std::string_view language) {
  const std::string text = base::lower(words);
  const Found habit = find_phrase(text, phrases(Kind::usual, language));
  return habit.size > 0 ? std::optional(VagueWords{habit.at, habit.at + habit.size}) : std::nullopt;
}

std::optional<VagueWords> vague_amount(std::string_view words, std::string_view language) {
  const std::string text = base::lower(words);
  const Phrases& some = phrases(Kind::some, language);
  for (Found vague = find_phrase(text, some); vague.size > 0; vague = find_phrase(text, some, vague.at + 1)) {
    const std::size_t end = food_behind(text, vague.at + vague.size, language);
    if (end > 0) return VagueWords{vague.at, end};
  }
  return {};
}

}  // namespace tamis::rules
