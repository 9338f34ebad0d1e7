#include "core/change/swap_kind.h"

#include <algorithm>
#include <cmath>

#include "core/base/utf8.h"
#include "core/measure/read.h"

namespace tamis::change {

#define TAMIS_SWAP(name) extern const SwapKind swap_##name;
#include "core/change/swaps.inc"
#undef TAMIS_SWAP

namespace {

constexpr const SwapKind* all[] = {
#define TAMIS_SWAP(name) &swap_##name,
#include "core/change/swaps.inc"
#undef TAMIS_SWAP
};

}  // namespace

std::span<const SwapKind* const> swap_kinds() { return all; }

base::Finding bad_swap(std::string message, std::string advice) {
  base::Finding finding;
  finding.rule = "bad-swap";
  finding.message = std::move(message);
  finding.advice = std::move(advice);
  return finding;
}

std::string_view general_food(const fiche::Kitchen& kitchen, std::string_view id) {
  const fiche::Kitchen::OwnFood* own = kitchen.own_food(id);
  return own != nullptr && !own->like.empty() ? std::string_view(own->like) : id;
}

std::optional<base::Ratio> percent_of(std::string_view typed, const measure::Reading& reading) {
  std::string figure(base::trimmed(typed));
  if (figure.ends_with('%')) figure.pop_back();
  const auto read = measure::read_number(base::trimmed(figure), reading);
  if (!read || *read <= 0 || *read > 100) return std::nullopt;
  return *read;
}

std::optional<base::Ratio> in_100_g(double value) {
  if (std::isnan(value)) return std::nullopt;
  constexpr std::int64_t places = 10000;
  return base::Ratio(std::llround(value * static_cast<double>(places)), places);
}

bool is_one_of(std::string_view id, std::span<const std::string_view> ids) {
  return std::find(ids.begin(), ids.end(), id) != ids.end();
}

std::string first_name(std::string_view names) { return std::string(names.substr(0, names.find('|'))); }

std::string factor_text(base::Ratio factor) {
  std::string text = factor.decimal(3);
  while (text.ends_with('0')) text.pop_back();
  if (text.ends_with('.')) text.pop_back();
  return text;
}

std::string plain(base::Ratio value) {
  std::string text = value.decimal(2);
  while (text.ends_with('0')) text.pop_back();
  if (text.ends_with('.')) text.pop_back();
  return text;
}

}  // namespace tamis::change
