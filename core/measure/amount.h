#ifndef CORE_MEASURE_AMOUNT_H
#define CORE_MEASURE_AMOUNT_H

#include <string>
#include <vector>

#include "core/base/ratio.h"
#include "core/measure/unit.h"

namespace tamis::measure {

/// One figure with its unit, as written.
struct Quantity {
  base::Ratio value;
  const Unit* unit = nullptr;
  /// In g, ml, mm, pieces, s or °C; exact. Overflow when it does not fit, and for a gas mark that does not exist.
  [[nodiscard]] base::Ratio in_base() const;
  friend bool operator==(const Quantity&, const Quantity&) = default;
};

/// An amount, a length, a time or a temperature as a recipe states it.
///   exact     "250 g", "1 lb 2 oz" (low holds both parts), "about 60 minutes" (about), "4" (count)
///   range     "82–84 °C", "15 to 25 minutes", "20 minutes to 1/2 hour"
///   at_least  "at least 12 h", "140 °F or higher"        only low is filled
///   at_most   "at most 38 °C", "41 °F or lower"          only high is filled
///   words     "to taste", "overnight", "room temperature", "boiling": `words` holds the table's id of it
struct Amount {
  enum class Form : unsigned char { exact, range, at_least, at_most, words };
  Form form = Form::exact;
  bool about = false;
  Kind kind = Kind::count;
  std::vector<Quantity> low;   ///< parts that add up: lb and oz, cups and tbsp; of one kind
  std::vector<Quantity> high;  ///< of a range or at_most
  std::string words;           ///< form words: id of the trade word (core/measure/trade_words.inc)

  /// Same form, figures and units as written: 1000 g is not 1 kg here (compare low_base for that).
  friend bool operator==(const Amount&, const Amount&) = default;
  [[nodiscard]] bool has_figure() const { return form != Form::words; }
  /// Sums of the parts in g, ml, mm, pieces, s or °C. For exact both are the same; for at_least high, and for
  /// at_most low, is the only figure there is. Not for form words.
  [[nodiscard]] base::Ratio low_base() const;
  [[nodiscard]] base::Ratio high_base() const;
  /// Halfway between the two.
  [[nodiscard]] base::Ratio middle_base() const;
};

/// An exact amount of one figure.
Amount amount_of(base::Ratio value, const Unit& unit);

/// A share of something: "1/2", "half", "a third", "3 %", "the rest"; or an amount of it: "125 g".
struct Share {
  enum class Form : unsigned char { fraction, rest, amount };
  Form form = Form::fraction;
  base::Ratio fraction;  ///< 0 to 1 ("3 %" is 3/100)
  Amount amount;
  friend bool operator==(const Share&, const Share&) = default;
};

/// Value in another unit of the same kind: exact. Overflow, a kind that differs, or a temperature
/// that is no gas mark where one is wanted, gives Ratio::overflow().
base::Ratio convert(base::Ratio value, const Unit& from, const Unit& to);

}  // namespace tamis::measure

#endif
