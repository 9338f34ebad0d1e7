#include "core/measure/money.h"

#include <algorithm>
#include <cstdio>
#include <cstdlib>

#include "core/base/utf8.h"

namespace tamis::measure {

std::optional<Money> read_money(std::string_view text) {
  text = base::trimmed(text);
  const std::size_t space = text.rfind(' ');
  if (space == text.npos) return std::nullopt;
  const std::string_view currency = text.substr(space + 1);
  const auto capital = [](char c) { return c >= 'A' && c <= 'Z'; };
  if (currency.size() != 3 || !std::all_of(currency.begin(), currency.end(), capital)) return std::nullopt;
  std::string figure(base::trimmed(text.substr(0, space)));
  std::replace(figure.begin(), figure.end(), ',', '.');
  if (figure.empty() || figure.find_first_not_of("0123456789.") != figure.npos) return std::nullopt;
  const auto amount = base::Ratio::parse(figure);
  if (!amount) return std::nullopt;
  return Money{*amount, std::string(currency)};
}

std::string write_money(const Money& money, std::string_view language) {
  if (!money.amount.ok()) return "?";
  const std::int64_t cents = (money.amount * base::Ratio(100)).nearest();
  const bool comma = language.starts_with("fr") || language.starts_with("de") || language.starts_with("es") || language.starts_with("it");
  char buffer[48];
  std::snprintf(buffer, sizeof buffer, "%s%lld%c%02lld", cents < 0 ? "-" : "", static_cast<long long>(std::llabs(cents) / 100),
                comma ? ',' : '.', static_cast<long long>(std::llabs(cents) % 100));
  return std::string(buffer) + " " + money.currency;
}

}  // namespace tamis::measure
