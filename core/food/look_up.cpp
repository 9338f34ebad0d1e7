#include <algorithm>
#include <bit>
#include <cstdint>
#include <string>
#include <unordered_map>

#include "core/base/nearest.h"
#include "core/food/fold.h"
#include "core/food/food.h"

// Every name of every food is a set of word stems. A query is one too; the names that share words with it are found
// through the words, and how the two sets lie to each other says how good a match it is.

namespace tamis::food {
namespace {

using WordId = std::uint16_t;

struct Alias {
  std::string_view name;
  std::string_view language;
  std::string_view food;
};
constexpr Alias aliases[] = {
#include "core/food/table/aliases.inc"
};

struct Name {
  const Food* food;
  std::string_view language;
  std::string folded;
  std::size_t words;  ///< how many different ones
};

struct Word {
  std::string text;
  std::uint32_t letters;            ///< bit a letter: two words n edits apart differ in at most 2n of them
  std::vector<std::uint32_t> names;  ///< that hold it, each once
};

std::uint32_t letters_of(std::string_view word) {
  std::uint32_t bits = 0;
  for (const char c : word) bits |= 1U << (static_cast<unsigned char>(c) & 31U);
  return bits;
}

/// Built at the first look-up and never changed after.
class Index {
 public:
  Index();
  [[nodiscard]] const std::vector<Name>& names() const { return names_; }
  [[nodiscard]] const Word& word(WordId id) const { return words_[id]; }
  [[nodiscard]] const WordId* find(const std::string& stem) const;
  [[nodiscard]] std::vector<WordId> near(const std::string& stem) const;
  /// Names that read the same when written as one word: "corn starch" and "cornstarch".
  [[nodiscard]] const std::vector<std::uint32_t>* joined(const std::string& letters) const;

 private:
  void add(const Food* food, std::string_view language, std::string_view name);
  void add_all(const Food& food, std::string_view language, std::string_view bar_separated);

  std::vector<Name> names_;
  std::vector<Word> words_;
  std::unordered_map<std::string, WordId> by_stem_;
  std::unordered_map<std::string, std::vector<std::uint32_t>> joined_;
};

std::string join(const std::vector<std::string>& words) {
  std::string all;
  for (const std::string& word : words) all += word;
  return all;
}

Index::Index() {
  names_.reserve(foods().size() * 6);
  by_stem_.reserve(4096);
  joined_.reserve(8192);
  for (const Food& food : foods()) {
    add_all(food, "en", food.english);
    add_all(food, "fr", food.french);
  }
  for (const Alias& alias : aliases) add(food_by_id(alias.food), alias.language, alias.name);
}

void Index::add_all(const Food& food, std::string_view language, std::string_view names) {
  while (!names.empty()) {
    const std::size_t end = std::min(names.find('|'), names.size());
    add(&food, language, names.substr(0, end));
    names.remove_prefix(std::min(end + 1, names.size()));
  }
}

void Index::add(const Food* food, std::string_view language, std::string_view name) {
  const auto place = static_cast<std::uint32_t>(names_.size());
  Name& added = names_.emplace_back(Name{food, language, fold(name), 0});
  const std::vector<std::string> parts = stems(added.folded);
  joined_[join(parts)].push_back(place);
  for (const std::string& part : parts) {
    const auto [found, fresh] = by_stem_.try_emplace(part, static_cast<WordId>(words_.size()));
    if (fresh) words_.push_back(Word{part, letters_of(part), {}});
    std::vector<std::uint32_t>& holders = words_[found->second].names;
    if (!holders.empty() && holders.back() == place) continue;
    holders.push_back(place);
    ++added.words;
  }
}

const WordId* Index::find(const std::string& stem) const {
  const auto found = by_stem_.find(stem);
  return found == by_stem_.end() ? nullptr : &found->second;
}

const std::vector<std::uint32_t>* Index::joined(const std::string& letters) const {
  const auto found = joined_.find(letters);
  return found == joined_.end() ? nullptr : &found->second;
}

/// Words as few edits away as any is: one for words up to four letters, two up to eight, three beyond. A figure
/// has no near miss: 64 % is not 60 %.
std::vector<WordId> Index::near(const std::string& stem) const {
  std::vector<WordId> found;
  if (stem.size() < 3 || (stem[0] >= '0' && stem[0] <= '9')) return found;
  std::size_t limit = stem.size() <= 4 ? 1 : stem.size() <= 8 ? 2 : 3;
  const std::uint32_t letters = letters_of(stem);
  for (std::size_t i = 0; i < words_.size(); ++i) {
    const Word& word = words_[i];
    const std::size_t longer = std::max(word.text.size(), stem.size());
    if (longer - std::min(word.text.size(), stem.size()) > limit || word.text.size() < 3) continue;
    if (static_cast<std::size_t>(std::popcount(word.letters ^ letters)) > 2 * limit) continue;
    const std::size_t edits = base::edit_distance(stem, word.text, limit);
    if (edits > limit) continue;
    if (edits < limit) found.clear();
    limit = edits;
    found.push_back(static_cast<WordId>(i));
  }
  return found;
}

const Index& the_index() {
  static const Index index;
  return index;
}

/// What was asked, as the index has it.
struct Query {
  std::string folded;
  std::string language;
  std::vector<std::string> words;
  std::size_t head = 0;  ///< words before the first comma or bracket; what comes after describes
};

Query read_query(std::string_view name, std::string_view language) {
  Query query{fold(name), std::string(language.substr(0, 2)), {}, 0};
  query.words = stems(query.folded);
  query.head = stems(fold(name.substr(0, name.find_first_of(",(;")))).size();
  return query;
}

struct Candidate {
  std::uint32_t name;
  Match::How how;
  int score;
};

/// One word of the query and a word of the index that it is, or may be.
struct Hit {
  std::uint32_t name;
  std::uint32_t position;
};

/// The later a word stands in English the more it is the thing ("raspberry vinegar"), in French the earlier
/// ("vinaigre de framboise"); words after a comma only describe.
int weight(const Query& query, std::size_t position) {
  if (position >= query.head) return 0;
  const auto place = static_cast<int>(std::min<std::size_t>(position, 8));
  return query.language == "fr" || query.language == "es" ? 9 - place : 1 + place;
}

/// Sorts the hits by name and judges each name once. `how_best` is what a name equal to the query counts as.
void judge(const Query& query, std::vector<Hit>& hits, bool sure, std::vector<Candidate>& out) {
  std::sort(hits.begin(), hits.end(), [](Hit a, Hit b) { return a.name != b.name ? a.name < b.name : a.position < b.position; });
  const std::vector<Name>& names = the_index().names();
  for (std::size_t at = 0; at < hits.size();) {
    const std::uint32_t place = hits[at].name;
    std::size_t shared = 0;
    int best_weight = 0;
    for (std::uint32_t last = ~0U; at < hits.size() && hits[at].name == place; ++at) {
      if (hits[at].position == last) continue;
      last = hits[at].position;
      ++shared;
      best_weight = std::max(best_weight, weight(query, last));
    }
    const Name& name = names[place];
    const bool whole_name = shared == name.words;
    const bool whole_query = shared == query.words.size();
    if (!whole_name && !whole_query) continue;
    const int score = static_cast<int>(100 * shared) + best_weight * 3 - static_cast<int>(10 * (name.words - shared));
    const Match::How how = !sure                                   ? Match::How::near
                           : whole_name && name.folded == query.folded ? Match::How::exact
                           : whole_name && whole_query             ? Match::How::variant
                                                                   : Match::How::part;
    out.push_back({place, how, score});
  }
}

void collect_known(const Query& query, std::vector<Candidate>& out) {
  std::vector<Hit> hits;
  for (std::size_t i = 0; i < query.words.size(); ++i) {
    const WordId* id = the_index().find(query.words[i]);
    if (id == nullptr) continue;
    for (const std::uint32_t name : the_index().word(*id).names) hits.push_back({name, static_cast<std::uint32_t>(i)});
  }
  judge(query, hits, true, out);
  if (const auto* same = the_index().joined(join(query.words))) {
    for (const std::uint32_t name : *same) {
      const bool exact = the_index().names()[name].folded == query.folded;
      out.push_back({name, exact ? Match::How::exact : Match::How::variant, 100});
    }
  }
}

/// With words that nobody knows taken for the words nearest to them.
void collect_near(const Query& query, std::vector<Candidate>& out) {
  std::vector<Hit> hits;
  bool mended = false;
  for (std::size_t i = 0; i < query.words.size(); ++i) {
    const WordId* id = the_index().find(query.words[i]);
    std::vector<WordId> ids = id != nullptr ? std::vector<WordId>{*id} : the_index().near(query.words[i]);
    mended = mended || (id == nullptr && !ids.empty());
    for (const WordId word : ids) {
      for (const std::uint32_t name : the_index().word(word).names) hits.push_back({name, static_cast<std::uint32_t>(i)});
    }
  }
  if (mended) judge(query, hits, false, out);
}

}  // namespace

std::vector<Match> look_up(std::string_view name, std::string_view language, std::size_t most) {
  const Query query = read_query(name, language);
  const bool named = std::any_of(query.folded.begin(), query.folded.end(), [](char c) { return c >= 'a'; });
  if (!named) return {};
  std::vector<Candidate> found;
  collect_known(query, found);
  const bool sure = std::any_of(found.begin(), found.end(), [](auto& c) { return c.how <= Match::How::variant; });
  if (!sure) collect_near(query, found);

  const std::vector<Name>& names = the_index().names();
  const auto foreign = [&](const Candidate& c) { return names[c.name].language != query.language; };
  std::sort(found.begin(), found.end(), [&](const Candidate& a, const Candidate& b) {
    if (a.how != b.how) return a.how < b.how;
    if (foreign(a) != foreign(b)) return foreign(b);
    if (a.score != b.score) return a.score > b.score;
    return a.name < b.name;
  });
  std::vector<Match> matches;
  for (const Candidate& candidate : found) {
    if (matches.size() == most) break;
    const Food* food = names[candidate.name].food;
    if (std::any_of(matches.begin(), matches.end(), [&](auto& match) { return match.food == food; })) continue;
    matches.push_back({food, candidate.how});
  }
  return matches;
}

}  // namespace tamis::food
