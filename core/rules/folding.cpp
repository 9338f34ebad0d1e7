#include "core/rules/folding.h"

namespace tamis::rules {
namespace {

constexpr double margin = 5;               // K: the bowl, and how much goes in at once
constexpr double spare = 8;                // K: white and milk chocolate go cooler, weak jellies warmer
constexpr double chocolate_counts = 0.08;  // of the whole
constexpr double sweet = 0.06;             // of the whole: a cream and not a sauce
constexpr double below_everything = -100;

double low_of_share(const Check& check, int step, unsigned kinds) {
  const auto share = share_of_kinds(check, step, kinds);
  return share ? share->low : 0;
}

}  // namespace

std::optional<FoldingWindow> folding_window(const Check& check, int step, unsigned base_kinds, unsigned foam_kinds) {
  const bool gelatine = (base_kinds & kind::any_gelatine) != 0;
  const TradeFigure &warm = figures::fold_chocolate, &cool = figures::fold_gelatine, &cold = figures::fold_pastry_cream;
  if ((base_kinds & kind::chocolate) != 0) {
    if (low_of_share(check, step, kind::chocolate) < chocolate_counts) return std::nullopt;
    return FoldingWindow{gelatine ? cool.low - margin : warm.low - spare,
                         warm.high + margin,
                         warm,
                         "a chocolate base is folded at " + text_of(warm),
                         "it sets in flakes when the cold foam comes in",
                         "it melts the foam"};
  }
  if (gelatine) {
    return FoldingWindow{cool.low - 2 * margin,
                         cool.high + spare,
                         cool,
                         "a base with gelatine is folded near setting, at " + text_of(cool),
                         "it has set and stays in lumps",
                         "it melts the foam, and the gelatine sinks before it sets"};
  }
  const bool pastry_cream = (base_kinds & (kind::milk | kind::egg)) != 0 && low_of_share(check, step, kind::sugar) >= sweet;
  if (!pastry_cream || (foam_kinds & kind::egg) != 0 || (base_kinds & kind::other) != 0) return std::nullopt;
  return FoldingWindow{
      below_everything,    cold.high + spare, cold, "whipped cream is folded into a pastry cream at " + text_of(cold), "",
      "it melts the cream"};
}

}  // namespace tamis::rules
