#include <algorithm>
#include <cstdint>
#include <string>
#include <vector>

#include "core/food/fold.h"
#include "core/food/food.h"
#include "core/food/name_index.h"

// Every name of every food is a set of word stems. A query is one too; how the two sets lie to each other says how
// good a match it is.

namespace tamis::food {
namespace {

using NameId = NameIndex::NameId;
using WordId = NameIndex::WordId;

constexpr std::size_t most_words = 32;  // longer than any name with all that is said about it: a sentence

/// What was asked, as the index has it.
struct Query {
  std::string folded;
  std::string language;
  std::vector<std::string> words;
  std::size_t head = 0;  ///< words before the first comma or bracket; what comes after describes
};

Query read_query(std::string_view name, std::string_view language) {
  Query query{fold(name), std::string(language.substr(0, 2)), {}, 0};
  stems(fold(name.substr(0, name.find_first_of(",(;"))), query.words);
  query.head = query.words.size();
  stems(query.folded, query.words);
  return query;
}

struct Candidate {
  NameId name;
  Match::How how;
  int score;
};

/// One word of the query and a word of the index that it is, or may be.
struct Hit {
  NameId name;
  std::uint16_t position;
};

/// The later a word stands in English the more it is the thing ("raspberry vinegar"), in French the earlier
/// ("vinaigre de framboise"); words after a comma only describe.
int weight(const Query& query, std::size_t position) {
  if (position >= query.head) return 0;
  const auto place = static_cast<int>(std::min<std::size_t>(position, 8));
  return query.language == "fr" || query.language == "es" ? 9 - place : 1 + place;
}

/// Same words, or one of the two is a part of the other.
void judge(const Query& query, NameId name, std::size_t shared, int best_weight, bool sure,
           std::vector<Candidate>& out) {
  const NameIndex& index = NameIndex::the();
  const std::size_t words = index.word_count(name);
  const bool whole_name = shared == words;
  const bool whole_query = shared == query.words.size();
  if (!whole_name && !whole_query) return;
  const int score = static_cast<int>(100 * shared) + best_weight * 3 - static_cast<int>(10 * (words - shared));
  Match::How how = Match::How::part;
  if (!sure) {
    how = Match::How::near;
  } else if (whole_name && whole_query) {
    how = index.folded(name) == query.folded ? Match::How::exact : Match::How::variant;
  }
  out.push_back({name, how, score});
}

/// Judges each name that was hit, by how many of the query's words hit it.
void judge_all(const Query& query, std::vector<Hit>& hits, bool sure, std::vector<Candidate>& out) {
  std::sort(hits.begin(), hits.end(),
            [](Hit a, Hit b) { return a.name != b.name ? a.name < b.name : a.position < b.position; });
  for (std::size_t at = 0; at < hits.size();) {
    const NameId name = hits[at].name;
    std::size_t shared = 0;
    int best_weight = 0;
    for (std::size_t last = query.words.size(); at < hits.size() && hits[at].name == name; ++at) {
      if (hits[at].position == last) continue;
      last = hits[at].position;
      ++shared;
      best_weight = std::max(best_weight, weight(query, last));
    }
    judge(query, name, shared, best_weight, sure, out);
  }
}

void hit(WordId word, std::size_t position, std::vector<Hit>& hits) {
  const auto at = static_cast<std::uint16_t>(position);
  for (const NameId name : NameIndex::the().names_with(word)) hits.push_back({name, at});
}

void collect_known(const Query& query, std::vector<Candidate>& out) {
  const NameIndex& index = NameIndex::the();
  std::vector<Hit> hits;
  for (std::size_t i = 0; i < query.words.size(); ++i) {
    const WordId word = index.find(query.words[i]);
    if (word != NameIndex::no_word) hit(word, i, hits);
  }
  judge_all(query, hits, true, out);
  for (const NameId name : index.joined(query.words)) {
    out.push_back({name, index.folded(name) == query.folded ? Match::How::exact : Match::How::variant, 100});
  }
}

/// With words that nobody knows taken for the words nearest to them.
void collect_near(const Query& query, std::vector<Candidate>& out) {
  const NameIndex& index = NameIndex::the();
  std::vector<Hit> hits;
  bool mended = false;
  for (std::size_t i = 0; i < query.words.size(); ++i) {
    const WordId word = index.find(query.words[i]);
    if (word != NameIndex::no_word) {
      hit(word, i, hits);
      continue;
    }
    for (const WordId other : index.near(query.words[i])) {
      mended = true;
      hit(other, i, hits);
    }
  }
  if (mended) judge_all(query, hits, false, out);
}

/// Best first; equal ones in the table's order.
void rank(const Query& query, std::vector<Candidate>& found) {
  const auto foreign = [&](const Candidate& c) { return NameIndex::the().language(c.name) != query.language; };
  std::sort(found.begin(), found.end(), [&](const Candidate& a, const Candidate& b) {
    if (a.how != b.how) return a.how < b.how;
    if (foreign(a) != foreign(b)) return foreign(b);
    if (a.score != b.score) return a.score > b.score;
    return a.name < b.name;
  });
}

}  // namespace

std::vector<Match> look_up(std::string_view name, std::string_view language, std::size_t most) {
  const Query query = read_query(name, language);
  const bool named = std::any_of(query.folded.begin(), query.folded.end(), [](char c) { return c >= 'a'; });
  if (!named || query.words.size() > most_words) return {};
  std::vector<Candidate> found;
  collect_known(query, found);
  const bool sure = std::any_of(found.begin(), found.end(), [](auto& c) { return c.how <= Match::How::variant; });
  if (!sure) collect_near(query, found);
  rank(query, found);

  std::vector<Match> matches;
  for (const Candidate& candidate : found) {
    if (matches.size() == most) break;
    const Food* food = &NameIndex::the().food(candidate.name);
    if (std::any_of(matches.begin(), matches.end(), [&](auto& match) { return match.food == food; })) continue;
    matches.push_back({food, candidate.how});
  }
  return matches;
}

}  // namespace tamis::food
