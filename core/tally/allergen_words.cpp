#include "core/tally/allergen_words.h"

#include <algorithm>

#include "core/base/utf8.h"
#include "core/food/allergen_bits.h"

namespace tamis::tally {
namespace {

struct Row {
  food::Allergens bit;
  std::string_view english, french, name, french_name, us_name;
};

constexpr Row rows[] = {
#define ALLERGEN_WORDS(id, english, french, name, french_name, us) {food::allergen::id, english, french, name, french_name, us},
#include "core/tally/allergen_words.inc"
#undef ALLERGEN_WORDS
};

const Row& row_of(food::Allergens bit) {
  return *std::find_if(std::begin(rows), std::end(rows), [&](const Row& row) { return row.bit == bit; });
}

bool french(std::string_view language) { return language.starts_with("fr"); }
std::string_view words_in(const Row& row, std::string_view language) { return french(language) ? row.french : row.english; }

bool letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || static_cast<unsigned char>(c) >= 0x80;
}

template <class Do>
void for_each_word(std::string_view words, Do found) {
  while (!words.empty()) {
    const std::size_t bar = std::min(words.find('|'), words.size());
    found(words.substr(0, bar));
    words.remove_prefix(std::min(bar + 1, words.size()));
  }
}

struct Place {
  std::size_t begin, end;
};

/// Places of a word, each at the start of a word of the text and to its end: "egg" is not in "veggie" nor in "eggplant".
void find_word(std::string_view lower, std::string_view word, std::vector<Place>& out) {
  for (std::size_t at = lower.find(word); at != lower.npos; at = lower.find(word, at + 1)) {
    if (at > 0 && letter(lower[at - 1])) continue;
    std::size_t end = at + word.size();
    while (end < lower.size() && letter(lower[end])) ++end;
    if (lower.substr(at, end - at) == "eggplant" || lower.substr(at, end - at) == "codling") continue;
    out.push_back({at, end});
  }
}

}  // namespace

food::Allergens named_by(Law law, food::Allergens bits) {
  food::Allergens out = 0;
  for (const food::AllergenName& name : food::allergen_names()) {
    if ((law == Law::eu ? name.eu : name.us)) out |= bits & name.bit;
  }
  return out;
}

std::vector<Run> mark_allergens(std::string_view text, food::Allergens& bits, std::string_view language) {
  // Lowering keeps the length of the letters that the words are made of; where it did not, nothing is set apart.
  const std::string lower = base::lower(text);
  std::vector<Place> places;
  food::Allergens unnamed = bits;
  for (const Row& row : rows) {
    if ((bits & row.bit) == 0 || lower.size() != text.size()) continue;
    const std::size_t before = places.size();
    for_each_word(words_in(row, language), [&](std::string_view word) { find_word(lower, word, places); });
    if (places.size() > before) unnamed &= ~row.bit;
  }
  bits = unnamed;
  std::sort(places.begin(), places.end(), [](Place a, Place b) { return a.begin < b.begin; });
  std::vector<Run> out;
  std::size_t done = 0;
  for (const Place& place : places) {
    if (place.begin < done) continue;
    if (place.begin > done) out.push_back({std::string(text.substr(done, place.begin - done)), false});
    out.push_back({std::string(text.substr(place.begin, place.end - place.begin)), true});
    done = place.end;
  }
  if (done < text.size()) out.push_back({std::string(text.substr(done)), false});
  return out;
}

std::string word_for(food::Allergens bit, std::string_view names, std::string_view language) {
  const Row& row = row_of(bit);
  const std::string lower = base::lower(names);
  std::string found;
  std::size_t first = lower.size();  // what is named first is most of it
  for_each_word(words_in(row, language), [&](std::string_view word) {
    std::vector<Place> places;
    find_word(lower, word, places);
    // A stem of several words is no word of its own.
    const bool whole = word != "celer" && word != "anchov" && word != "cacahu";
    if (!whole || places.empty() || places.front().begin >= first) return;
    first = places.front().begin;
    found = word;
  });
  if (!found.empty()) return found;
  return std::string(french(language) ? row.french_name : row.name);
}

std::string us_name(food::Allergens bit, std::string_view names) {
  const Row& row = row_of(bit);
  const bool by_sort = bit == food::allergen::nuts || bit == food::allergen::fish || bit == food::allergen::crustaceans;
  std::string out(row.us_name);
  if (!by_sort) return out;
  const std::string lower = base::lower(names);
  std::string sorts;
  for_each_word(row.english, [&](std::string_view word) {
    std::vector<Place> places;
    find_word(lower, word, places);
    if (!places.empty() && word != row.name && word != "anchov") sorts += (sorts.empty() ? "" : ", ") + std::string(word);
  });
  return sorts.empty() ? out : out + " (" + sorts + ")";
}

}  // namespace tamis::tally
