// Names of units and how they are found. The table is spelled for people; what is searched is one sorted list of
// normal forms, made at the first question.

#include "core/measure/name_index.h"

#include <algorithm>
#include <cassert>
#include <vector>

#include "core/base/utf8.h"

namespace tamis::measure {
namespace {

struct Row {
  std::string_view language;
  std::string_view units;
  std::string_view one;
  std::string_view many;
  std::string_view also;
};

constexpr Row rows[] = {
#define NAMES(language, units, one, many, also) {language, units, one, many, also},
#include "core/measure/unit_names.inc"
#undef NAMES
};

template <class Each>
void for_each_part(std::string_view text, char sign, Each each) {
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(sign), text.size());
    each(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
}

using Entry = std::vector<NameEntry>::const_iterator;

struct Index {
  std::vector<NameEntry> by_key;
  std::size_t begins[257] = {};  ///< where the keys start that begin with a byte; one more for the end
  std::vector<UnitName> names;
};

bool is_one_letter(std::string_view name) { return base::count_scalars(name) == 1; }

/// `start`: the entries from here on are of this row; a name spelled alike for one and many is kept once.
void add_name(Index& index, const Row& row, std::size_t start, std::string_view name) {
  for_each_part(row.units, ' ', [&](std::string_view id) {
    const bool usual = id.ends_with('!');
    if (usual) id.remove_suffix(1);
    const Unit* unit = unit_by_id(id);
    assert(unit != nullptr);
    const auto twice = [&](const NameEntry& entry) { return entry.spelled == name && entry.unit == unit; };
    const auto row_start = index.by_key.begin() + static_cast<std::ptrdiff_t>(start);
    if (std::any_of(row_start, index.by_key.end(), twice)) return;
    index.by_key.push_back({normal_form(name), name, row.language, unit, usual, false, is_one_letter(name)});
    index.names.push_back({name, unit->id, row.language});
  });
}

Index make_index() {
  Index index;
  for (const Row& row : rows) {
    const std::size_t start = index.by_key.size();
    add_name(index, row, start, row.one);
    add_name(index, row, start, row.many);
    for_each_part(row.also, '|', [&](std::string_view name) { add_name(index, row, start, name); });
  }
  for (const Unit& unit : units()) {
    index.by_key.push_back({normal_form(unit.id), unit.id, {}, &unit, false, true, is_one_letter(unit.id)});
  }
  std::stable_sort(index.by_key.begin(), index.by_key.end(),
                   [](const NameEntry& a, const NameEntry& b) { return a.key < b.key; });
  for (const NameEntry& entry : index.by_key) ++index.begins[static_cast<unsigned char>(entry.key.front()) + 1];
  for (std::size_t byte = 1; byte < std::size(index.begins); ++byte) index.begins[byte] += index.begins[byte - 1];
  return index;
}

const Index& index() {
  static const Index made = make_index();
  return made;
}

/// Where the names start whose key is this or goes on from this; the end where there are none.
Entry first_from(const Index& index, std::string_view key) {
  const auto byte = static_cast<unsigned char>(key.front());
  const auto place = [&](std::size_t i) { return index.by_key.begin() + static_cast<std::ptrdiff_t>(index.begins[i]); };
  const Entry first = std::lower_bound(place(byte), place(byte + 1U), key,
                                       [](const NameEntry& entry, std::string_view wanted) { return entry.key < wanted; });
  return first != index.by_key.end() && first->key.starts_with(key) ? first : index.by_key.end();
}

std::span<const NameEntry> entries_of_key(const Index& index, std::string_view key, Entry first) {
  auto last = first;
  while (last != index.by_key.end() && last->key == key) ++last;
  return {first, last};
}

bool is_name_sign(char32_t c) {
  return c == U'°' || c == U'º' || c == U'˚' || c == U'℃' || c == U'℉' || c == U'ℓ' || c == U'"' || c == U'\'' ||
         c == U'″' || c == U'′' || c == U'”' || c == U'’' || c == U'³' || c == U')' || c == U'#';
}

}  // namespace

bool is_letter(char32_t c) {
  return (c >= U'a' && c <= U'z') || (c >= U'A' && c <= U'Z') ||
         (c >= 0xC0 && c <= 0x24F && c != 0xD7 && c != 0xF7) || c == U'ℓ';
}

bool is_digit(char32_t c) { return c >= U'0' && c <= U'9'; }

std::string normal_form(std::string_view text) {
  std::string out;
  bool gap = false;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t start = at;
    const auto c = base::next_scalar(text, at);
    if (c && (base::is_space(*c) || *c == U'.')) {
      gap = true;
      continue;
    }
    if (gap && !out.empty()) out += ' ';
    gap = false;
    if (c && *c < 0x80) {
      out += static_cast<char>(*c >= U'A' && *c <= U'Z' ? *c + 32 : *c);
    } else {
      out += base::lower(text.substr(start, at - start));
    }
  }
  return out;
}

std::string primary_language(std::string_view tag) {
  std::string out(tag.substr(0, std::min(tag.find('-'), tag.size())));
  for (char& c : out) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c + 32);
  }
  return out;
}

WordEnds::WordEnds(std::string_view text) {
  constexpr std::size_t furthest = 64;
  bool in_name = false;
  bool last_letter = false;
  bool last_digit = false;
  for (std::size_t at = 0; at < text.size() && at < furthest && count_ < most;) {
    const std::size_t start = at;
    const auto c = base::next_scalar(text, at);
    const bool letter = c && is_letter(*c);
    const bool digit = c && is_digit(*c);
    const bool run_on = (last_letter && letter) || (last_digit && digit);
    if (in_name && !run_on) ends_[count_++] = start;
    in_name = letter || digit || (c && is_name_sign(*c)) || (c && *c == U'½');
    last_letter = letter;
    last_digit = digit;
    if (in_name && at >= text.size() && count_ < most) ends_[count_++] = at;
  }
}

bool NameEntry::stands_for(std::string_view written, std::string_view in_language) const {
  return (!one_letter || spelled == written) && (language.empty() || language == in_language || language == "en");
}

NameMatch match_name(std::string_view text, std::string_view language) {
  const Index& names = index();
  const WordEnds words(text);
  NameMatch best;
  for (const std::size_t end : words.ends()) {
    const std::string_view written = text.substr(0, end);
    const std::string key = normal_form(written);
    const Entry first = key.empty() ? names.by_key.end() : first_from(names, key);
    if (first == names.by_key.end()) break;
    const auto entries = entries_of_key(names, key, first);
    const auto fits = [&](const NameEntry& entry) { return entry.stands_for(written, language); };
    if (std::any_of(entries.begin(), entries.end(), fits)) best = {end, entries};
  }
  return best;
}

bool takes_stop(std::string_view name) {
  constexpr std::size_t longest_abbreviation = 4;
  const std::size_t gap = name.find_last_of(' ');
  return base::count_scalars(gap == std::string_view::npos ? name : name.substr(gap + 1)) <= longest_abbreviation;
}

std::vector<std::string_view> names_for(unsigned kinds, std::string_view language) {
  std::vector<std::string_view> names;
  for (const std::string_view spoken : {language, std::string_view(), std::string_view("en")}) {
    for (const NameEntry& entry : index().by_key) {
      const bool wanted = (kinds & (1U << static_cast<unsigned>(entry.unit->kind))) != 0;
      if (wanted && !entry.id && entry.language == spoken) names.push_back(entry.spelled);
    }
    if (language == "en" && spoken.empty()) break;
  }
  return names;
}

std::span<const UnitName> unit_names() { return index().names; }

std::string_view written_name(const Unit& unit, std::string_view tag, bool many) {
  const std::string language = primary_language(tag);
  const Row* found = nullptr;
  const auto means = [&](const Row& row) {
    bool yes = false;
    for_each_part(row.units, ' ', [&](std::string_view id) {
      if (id.ends_with('!')) id.remove_suffix(1);
      yes = yes || id == unit.id;
    });
    return yes;
  };
  for (const Row& row : rows) {
    if (!means(row)) continue;
    if (row.language == language) return many ? row.many : row.one;
    if (found == nullptr || (row.language == "en" && found->language != "en")) found = &row;
  }
  if (found == nullptr) return unit.id;
  return many ? found->many : found->one;
}

}  // namespace tamis::measure
