#ifndef CORE_MEASURE_TRADE_WORD_H
#define CORE_MEASURE_TRADE_WORD_H

#include <span>
#include <string_view>

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

}  // namespace tamis::measure

#endif
