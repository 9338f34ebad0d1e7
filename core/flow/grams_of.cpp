#include "core/flow/amounts.h"

namespace tamis::flow {
namespace {

using food::Role;
using measure::Amount;
using measure::Kind;

/// How far a piece strays from the table's mass (common practice; eggs are sorted by law).
double spread_of_piece(Role role) { return role == Role::egg ? 0.05 : 0.20; }

/// Base units of an amount, the ends moved out by a share.
Grams ends_of(const Amount& amount, double grams_each, double spread) {
  const double about = amount.about ? 0.05 : 0;
  const double low = amount.low_base().approximate() * grams_each;
  const double high = amount.high_base().approximate() * grams_each;
  return {low * (1 - about) * (1 - spread), high * (1 + about) * (1 + spread)};
}

std::string_view unit_of(const Amount& amount) {
  const auto& figure = amount.low.empty() ? amount.high : amount.low;
  return figure.empty() || figure.front().unit == nullptr ? std::string_view{} : figure.front().unit->id;
}

bool is_rough(const Amount& amount) {
  const auto& figure = amount.low.empty() ? amount.high : amount.low;
  return !figure.empty() && figure.front().unit != nullptr && figure.front().unit->rough;
}

std::optional<Grams> of_pieces(const Amount& amount, const food::Food& food, std::string_view size) {
  const std::string_view unit = unit_of(amount);
  const bool bare = unit == "piece" || unit == "each" || unit == "dozen" || unit == "pair";
  auto piece = food::piece_of(food, bare ? size : unit);
  if (!piece && bare && !size.empty()) piece = food::piece_of(food);
  if (!piece || !piece->grams.ok()) return std::nullopt;
  return ends_of(amount, piece->grams.approximate(), spread_of_piece(food.role));
}

}  // namespace

std::optional<Grams> grams_of(const Amount& amount, const food::Food* food, std::string_view prep,
                              std::string_view size) {
  if (!amount.has_figure() || !amount.low_base().ok() || !amount.high_base().ok()) return std::nullopt;
  if (amount.kind == Kind::mass) return ends_of(amount, 1, 0);
  if (food == nullptr) return std::nullopt;
  if (amount.kind == Kind::count) return of_pieces(amount, *food, size);
  if (amount.kind != Kind::volume) return std::nullopt;
  const auto density = food::density_of(*food, prep);
  if (!density || !density->grams_per_ml.ok()) return std::nullopt;
  Grams grams = ends_of(amount, density->grams_per_ml.approximate(), density->spread);
  if (is_rough(amount)) grams.low = 0;  // a spoonful is anything up to one
  return grams;
}

}  // namespace tamis::flow
