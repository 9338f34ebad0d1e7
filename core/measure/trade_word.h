#ifndef CORE_MEASURE_TRADE_WORD_H
#define CORE_MEASURE_TRADE_WORD_H

#include <cstddef>
#include <span>
#include <string_view>
#include <vector>

#include "core/measure/unit.h"

namespace tamis::measure {

/// A word that stands where a figure could: "overnight", "to taste", "room temperature", "moderate oven".
/// Table: core/measure/trade_words.inc.
struct TradeWord {
  std::string_view id;        ///< "overnight"
  std::string_view names;     ///< "overnight|over night", per language separated by ";": "en:…;fr:…"
  Kind kind;                  ///< time, temperature, or mass for words of amount ("to taste")
  std::string_view meaning;   ///< usual meaning, as read_amount reads it in English; "" where only the house can say
  bool needs_house;           ///< true: kitchens differ so much that a house meaning is wanted ("overnight")
  std::string_view source;
};

std::span<const TradeWord> trade_words();
const TradeWord* trade_word_by_id(std::string_view id);

/// One name of a trade word.
struct TradeName {
  std::string_view name;
  std::string_view language;
};
std::vector<TradeName> names_of(const TradeWord& word);

/// The trade word a whole text is: in its language, else in English, else by id. Null when it is none.
const TradeWord* read_trade_word(std::string_view text, std::string_view language);

/// The longest trade word a text starts with; used bytes 0 when there is none.
struct TradeWordFound {
  const TradeWord* word = nullptr;
  std::size_t used = 0;
};
TradeWordFound find_trade_word(std::string_view text, std::string_view language);

/// Its first name in the language, or the English one.
std::string_view written_trade_word(const TradeWord& word, std::string_view language);

}  // namespace tamis::measure

#endif
