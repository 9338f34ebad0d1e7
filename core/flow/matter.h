#ifndef CORE_FLOW_MATTER_H
#define CORE_FLOW_MATTER_H

#include <array>
#include <cstddef>
#include <optional>

#include "core/food/food.h"

namespace tamis::flow {

/// Between these two, as far as is known; both equal for an exact figure.
struct Range {
  double low = 0;
  double high = 0;
  [[nodiscard]] double middle() const { return (low + high) / 2; }
  [[nodiscard]] double width() const { return high - low; }
  friend bool operator==(const Range&, const Range&) = default;
};

/// What food is made of. Water, fat, protein, sugars, other carbohydrate, fibre, ash and alcohol make up the whole; salt
/// is part of the ash: 2.5 times the sodium (Regulation (EU) 1169/2011, Annex I, 11).
enum class Constituent : unsigned char { water, fat, protein, sugars, other_carbohydrate, fibre, ash, salt, alcohol };
constexpr std::size_t constituents = 9;
std::string_view constituent_name(Constituent constituent);  ///< "water", "other carbohydrate", ...

/// What one gram holds: of a mix one gram of all that went into it, less what the fiche says is lost. Bounds that add up:
/// of what nobody reports, each constituent can be nothing or all of the part that is not accounted for.
struct Matter {
  std::array<Range, constituents> parts{};
  Range energy_kcal;
  double melting_j = 0;  ///< the most heat that what is solid in it takes up on melting (see melting.h)
  /// What has happened to that gram without a word about how much: the most that went off as steam, that went with
  /// juice, trim or what stays in a sieve, and the most water and fat taken up.
  double off = 0, gone = 0, took_water = 0, took_fat = 0;

  Range& operator[](Constituent c) { return parts[static_cast<std::size_t>(c)]; }
  const Range& operator[](Constituent c) const { return parts[static_cast<std::size_t>(c)]; }
};

/// Nothing is known of it.
Matter unknown_matter();

/// By the table's composition of the food; what is not reported lies between nothing and what the rest leaves. `fat`: the
/// share that the fiche or the kitchen states where the food is sold at several; the rest is then as in the table.
Matter matter_of(const food::Food& food, std::optional<double> fat = {});

/// Adds `share` of `other` into a mix; shares add up to 1.
void add(Matter& mix, const Matter& other, double share);

/// Takes out this share of it as water (with what alcohol there is), by statement. False where there is not so much.
bool take_off(Matter& matter, double share);
/// Takes out this share of it, of which nobody knows what it is made of.
void take_unknown(Matter& matter, double share);

/// The same matter when it is weighed anew: what nothing was said about is in its shares from now on.
Matter weighed_anew(const Matter& matter);

/// How much of a gram is left, counting what nothing is said about.
Range left_of(const Matter& matter);
/// Shares of what is there in the end, 0 to 1, and its energy in kcal per g.
Range share_of(const Matter& matter, Constituent constituent);
Range energy_of(const Matter& matter);

}  // namespace tamis::flow

#endif
