#ifndef CORE_TALLY_COST_H
#define CORE_TALLY_COST_H

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/ratio.h"
#include "core/tally/makeup.h"

namespace tamis::tally {

// Money is exact: a price times a mass taken to the milligram, rounded once, to a millionth of the currency, so that any
// number of lines adds up without an error. Nothing is costed at nought because its price is not known: it is counted in
// unpriced, by its mass.

struct CostLine {
  std::string name;                     ///< the house's, else the author's
  fiche::Node component = fiche::none;  ///< of the fiche; none: of the batch as a whole
  std::optional<double> grams;          ///< as the list has it
  std::optional<double> bought;         ///< g as bought: trim on top
  std::optional<base::Ratio> cost;      ///< of the batch; empty when it is not known
  enum class Open : unsigned char {
    nothing,         ///< it is known
    no_price,        ///< the kitchen file has none for that day
    no_pack,         ///< the price does not say for how much, or in what cannot be weighed
    no_mass,         ///< how much of it goes in is not known
    trace,           ///< a pinch, to taste: not costed
    water,           ///< from the tap, and no price given
    other_currency,  ///< the price is in another currency than the first
  } open = Open::nothing;
  std::string since;                    ///< the day from which its price holds; "" when not stated
};
std::string_view open_name(CostLine::Open open);  ///< "no_price", ...

struct Cost {
  std::string currency;                 ///< ISO 4217; "" when nothing has a price
  std::vector<CostLine> foods;          ///< in the order of the lists, what is not of the food (tin butter) too
  std::vector<CostLine> packaging;      ///< for all portions
  base::Ratio food, hands, packed;      ///< sums of what is known, of the batch
  base::Ratio left_over;                ///< of food: what the batch buys and no portion gets
  base::Ratio batch;                    ///< all three
  std::optional<base::Ratio> portion;   ///< of what is known; empty when the yield states neither portions nor pieces
  double unpriced_g = 0;                ///< of foods without a price
  double all_g = 0;                     ///< of all foods with a mass, water without a price not counted
  bool hour_known = false;              ///< the kitchen states what an hour costs
  double seconds = 0;                   ///< hands-on
  int steps_unstated = 0;               ///< steps without hands-on time
  struct Of {
    fiche::Node component = fiche::none;
    base::Ratio food, hands;
  };
  std::vector<Of> components;           ///< in document order
  // Where the kitchen says how the dish is sold:
  std::optional<base::Ratio> price, net;         ///< of a portion, with and without tax
  std::optional<base::Ratio> food_share, share;  ///< of the net price: food alone, and all
  std::optional<base::Ratio> aim;                ///< what the house wants food_share to be at most
  /// Nothing keeps a price from being counted: no food without one, the hour known where there is work.
  [[nodiscard]] bool complete() const;
};

/// By the prices of a day, "2026-03-01"; the latest of each with "". `fiche_id` is what the kitchen's sale names.
Cost cost_of(const Makeup& makeup, const fiche::Kitchen& kitchen, std::string_view fiche_id, std::string_view day);

}  // namespace tamis::tally

#endif
