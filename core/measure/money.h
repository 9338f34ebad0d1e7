#ifndef CORE_MEASURE_MONEY_H
#define CORE_MEASURE_MONEY_H

#include <optional>
#include <string>
#include <string_view>

#include "core/base/ratio.h"

namespace tamis::measure {

/// An exact sum of one currency (ISO 4217: "EUR").
struct Money {
  base::Ratio amount;
  std::string currency;
};

/// "12.50 EUR", "12,50 EUR"; empty when it is not that.
std::optional<Money> read_money(std::string_view text);

/// To hundredths, halves up: "12.50 EUR"; with a comma where the language writes one.
std::string write_money(const Money& money, std::string_view language);

}  // namespace tamis::measure

#endif
