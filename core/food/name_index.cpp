#include "core/food/name_index.h"

#include <algorithm>
#include <bit>
#include <cassert>

#include "core/base/nearest.h"
#include "core/food/fold.h"

namespace tamis::food {
namespace {

struct Alias {
  std::string_view name;
  std::string_view language;
  std::string_view food;
};
constexpr Alias aliases[] = {
#include "core/food/table/aliases.inc"
};

constexpr std::uint32_t hash_start = 2166136261U;  // FNV-1a, 32 bits

std::uint32_t hash(std::string_view text, std::uint32_t from = hash_start) {
  for (const char c : text) from = (from ^ static_cast<unsigned char>(c)) * 16777619U;
  return from;
}

std::uint32_t letters_of(std::string_view word) {
  std::uint32_t bits = 0;
  for (const char c : word) bits |= 1U << (static_cast<unsigned char>(c) & 31U);
  return bits;
}

/// Slots enough that at most half are taken.
std::size_t slots_for(std::size_t entries) { return std::bit_ceil(entries * 2 + 1); }

/// People rarely miss both of a word's first letters: one is right, or they are swapped, or one is missing.
bool may_start_alike(std::string_view a, std::string_view b) {
  return a[0] == b[0] || a[1] == b[1] || a[0] == b[1] || a[1] == b[0];
}

std::string join(const std::vector<std::string>& stems) {
  std::string all;
  for (const std::string& stem : stems) all += stem;
  return all;
}

std::size_t count_names() {
  std::size_t names = std::size(aliases) + foods().size() * 2;
  for (const Food& food : foods()) {
    names += static_cast<std::size_t>(std::count(food.english.begin(), food.english.end(), '|') +
                                      std::count(food.french.begin(), food.french.end(), '|'));
  }
  return names;
}

}  // namespace

const NameIndex& NameIndex::the() {
  static const NameIndex index;
  return index;
}

NameIndex::NameIndex() {
  const std::size_t names = count_names();
  assert(names < no_word);
  names_.reserve(names);
  uses_.reserve(names * 3);
  texts_.reserve(names * 24);
  words_.reserve(names);
  word_slots_.assign(slots_for(names), 0);
  std::vector<std::string> stems;
  for (const Food& food : foods()) {
    add_all(food, "en", food.english, stems);
    add_all(food, "fr", food.french, stems);
  }
  for (const Alias& alias : aliases) {
    const Food* food = food_by_id(alias.food);
    if (food != nullptr) add(*food, alias.language, alias.name, stems);
  }
  sort_uses();
  hash_joined();
}

void NameIndex::add_all(const Food& food, std::string_view language, std::string_view names,
                        std::vector<std::string>& stems) {
  while (!names.empty()) {
    const std::size_t end = std::min(names.find('|'), names.size());
    add(food, language, names.substr(0, end), stems);
    names.remove_prefix(std::min(end + 1, names.size()));
  }
}

void NameIndex::add(const Food& food, std::string_view language, std::string_view name,
                    std::vector<std::string>& parts) {
  const auto place = static_cast<NameId>(names_.size());
  const std::string folded = fold(name);
  const auto begin = static_cast<std::uint32_t>(texts_.size());
  Name added{&food, language, begin, static_cast<std::uint16_t>(folded.size()), 0, hash_start};
  texts_ += folded;
  stems(folded, parts);
  for (const std::string& part : parts) {
    added.joined = hash(part, added.joined);
    const WordId word = word_of(part);
    const auto ours = uses_.end() - added.words;
    if (std::any_of(ours, uses_.end(), [&](Use use) { return use.word == word; })) continue;
    uses_.push_back({word, place});
    ++added.words;
  }
  names_.push_back(added);
}

/// The word of that stem, made when it is new.
NameIndex::WordId NameIndex::word_of(const std::string& stem) {
  const std::size_t mask = word_slots_.size() - 1;
  std::size_t slot = hash(stem) & mask;
  for (; word_slots_[slot] != 0; slot = (slot + 1) & mask) {
    const auto word = static_cast<WordId>(word_slots_[slot] - 1);
    if (text(words_[word]) == stem) return word;
  }
  assert(words_.size() < mask);  // the names bring about half a new word each; there are two slots a name
  const auto begin = static_cast<std::uint32_t>(texts_.size());
  words_.push_back({begin, static_cast<std::uint32_t>(stem.size()), letters_of(stem)});
  texts_ += stem;
  word_slots_[slot] = static_cast<std::uint16_t>(words_.size());
  return static_cast<WordId>(words_.size() - 1);
}

void NameIndex::sort_uses() {
  starts_.assign(words_.size() + 1, 0);
  for (const Use use : uses_) ++starts_[use.word + 1U];
  for (std::size_t i = 1; i < starts_.size(); ++i) starts_[i] += starts_[i - 1];
  holders_.resize(uses_.size());
  std::vector<std::uint32_t> next(starts_.begin(), starts_.end() - 1);
  for (const Use use : uses_) holders_[next[use.word]++] = use.name;
  uses_ = {};
}

void NameIndex::hash_joined() {
  joined_slots_.assign(slots_for(names_.size()), 0);
  const std::size_t mask = joined_slots_.size() - 1;
  for (std::size_t i = 0; i < names_.size(); ++i) {
    std::size_t slot = names_[i].joined & mask;
    while (joined_slots_[slot] != 0) slot = (slot + 1) & mask;
    joined_slots_[slot] = static_cast<std::uint16_t>(i + 1);
  }
}

std::string_view NameIndex::text(const Word& word) const {
  return std::string_view(texts_).substr(word.begin, word.length);
}

std::string_view NameIndex::folded(NameId name) const {
  return std::string_view(texts_).substr(names_[name].begin, names_[name].length);
}

NameIndex::WordId NameIndex::find(std::string_view stem) const {
  const std::size_t mask = word_slots_.size() - 1;
  for (std::size_t slot = hash(stem) & mask; word_slots_[slot] != 0; slot = (slot + 1) & mask) {
    const auto word = static_cast<WordId>(word_slots_[slot] - 1);
    if (text(words_[word]) == stem) return word;
  }
  return no_word;
}

std::span<const NameIndex::NameId> NameIndex::names_with(WordId word) const {
  return std::span(holders_).subspan(starts_[word], starts_[word + 1U] - starts_[word]);
}

std::vector<NameIndex::WordId> NameIndex::near(std::string_view stem) const {
  std::vector<WordId> found;
  if (stem.size() < 3 || stem.find_first_of("0123456789") != std::string_view::npos) return found;
  std::size_t limit = stem.size() <= 4 ? 1 : stem.size() <= 8 ? 2 : 3;
  const std::uint32_t letters = letters_of(stem);
  for (std::size_t i = 0; i < words_.size(); ++i) {
    const Word& word = words_[i];
    const std::size_t apart = word.length > stem.size() ? word.length - stem.size() : stem.size() - word.length;
    if (apart > limit || word.length < 3) continue;
    if (static_cast<std::size_t>(std::popcount(word.letters ^ letters)) > 2 * limit) continue;
    if (!may_start_alike(stem, text(word))) continue;
    const std::size_t edits = base::edit_distance(stem, text(word), limit);
    if (edits > limit) continue;
    if (edits < limit) found.clear();
    limit = edits;
    found.push_back(static_cast<WordId>(i));
  }
  return found;
}

std::vector<NameIndex::NameId> NameIndex::joined(const std::vector<std::string>& parts) const {
  std::vector<NameId> found;
  const std::string wanted = join(parts);
  const std::uint32_t hashed = hash(wanted);
  const std::size_t mask = joined_slots_.size() - 1;
  std::vector<std::string> theirs;
  for (std::size_t slot = hashed & mask; joined_slots_[slot] != 0; slot = (slot + 1) & mask) {
    const auto name = static_cast<NameId>(joined_slots_[slot] - 1);
    if (names_[name].joined != hashed) continue;
    stems(folded(name), theirs);
    if (join(theirs) == wanted) found.push_back(name);
  }
  return found;
}

}  // namespace tamis::food
