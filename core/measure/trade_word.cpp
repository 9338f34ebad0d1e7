#include "core/measure/trade_word.h"

#include <algorithm>
#include <vector>

#include "core/base/utf8.h"
#include "core/measure/name_index.h"

namespace tamis::measure {
namespace {

constexpr TradeWord rows[] = {
#define TRADE_WORD(id, kind, names, meaning, needs_house, source) \
  {id, names, Kind::kind, meaning, needs_house, source},
#include "core/measure/trade_words.inc"
#undef TRADE_WORD
};

struct Entry {
  std::string key;
  std::string_view language;
  const TradeWord* word;
};

/// No trade word does.
bool starts_with_figure(std::string_view text) {
  const char c = text.empty() ? ' ' : text[0];
  return (c >= '0' && c <= '9') || c == '-' || c == '.' || c == ' ';
}

std::vector<Entry> make_index() {
  std::vector<Entry> index;
  for (const TradeWord& word : rows) {
    for (const TradeName& name : names_of(word)) index.push_back({normal_form(name.name), name.language, &word});
  }
  std::sort(index.begin(), index.end(), [](const Entry& a, const Entry& b) { return a.key < b.key; });
  return index;
}

}  // namespace

std::span<const TradeWord> trade_words() { return rows; }

const TradeWord* trade_word_by_id(std::string_view id) {
  for (const TradeWord& word : rows) {
    if (word.id == id) return &word;
  }
  return nullptr;
}

std::vector<TradeName> names_of(const TradeWord& word) {
  std::vector<TradeName> names;
  std::string_view language;
  std::string_view left = word.names;
  while (!left.empty()) {
    const std::size_t colon = left.substr(0, 3).find(':');
    if (colon == 2) {
      language = left.substr(0, 2);
      left.remove_prefix(3);
    }
    const std::size_t end = std::min(left.find_first_of("|;"), left.size());
    names.push_back({left.substr(0, end), language});
    left.remove_prefix(std::min(end + 1, left.size()));
  }
  return names;
}

const TradeWord* read_trade_word(std::string_view text, std::string_view tag) {
  static const std::vector<Entry> index = make_index();
  constexpr std::size_t longest = 64;
  if (text.empty() || text.size() > longest || starts_with_figure(text)) return nullptr;
  const std::string key = normal_form(text);
  const std::string language = primary_language(tag);
  const auto less = [](const Entry& entry, const std::string& wanted) { return entry.key < wanted; };
  const TradeWord* english = nullptr;
  for (auto at = std::lower_bound(index.begin(), index.end(), key, less); at != index.end() && at->key == key; ++at) {
    if (at->language == language) return at->word;
    if (at->language == "en") english = at->word;
  }
  return english != nullptr ? english : trade_word_by_id(base::trimmed(text));
}

TradeWordFound find_trade_word(std::string_view text, std::string_view language) {
  if (starts_with_figure(text)) return {};
  const WordEnds words(text);
  for (std::size_t i = words.ends().size(); i-- > 0;) {
    const std::size_t end = words.ends()[i];
    if (const TradeWord* word = read_trade_word(text.substr(0, end), language)) return {word, end};
  }
  return {};
}

std::string_view written_trade_word(const TradeWord& word, std::string_view tag) {
  const std::string language = primary_language(tag);
  std::string_view english;
  for (const TradeName& name : names_of(word)) {
    if (name.language == language) return name.name;
    if (name.language == "en" && english.empty()) english = name.name;
  }
  return english;
}

}  // namespace tamis::measure
