#include "core/flow/matter.h"

#include <algorithm>
#include <cmath>

#include "core/flow/melting.h"

namespace tamis::flow {
namespace {

using food::Composition;

constexpr double salt_of_sodium = 2.5;      // g of salt a g of sodium
constexpr double richest_kcal = 9.0;        // a g of fat
constexpr double slack = 0.002;               // of a gram: what the table's own figures do not add up to
constexpr double none_left = 0.02;          // of a gram: less is not told apart from nothing

Range clamped(double low, double high) { return {std::clamp(low, 0.0, 1.0), std::clamp(high, 0.0, 1.0)}; }

/// A share from grams in 100 g; up to `rest` when it is not reported.
Range share(double per_100_g, double rest) {
  return std::isnan(per_100_g) ? Range{0, rest} : Range{per_100_g / 100, per_100_g / 100};
}

double reported(double per_100_g) { return std::isnan(per_100_g) ? 0 : per_100_g; }

/// Carbohydrate in the table is all of it, sugars and fibre too (USDA: by difference).
void split_carbohydrate(const Composition& c, double rest, Matter& made) {
  const Range all = share(c.carbohydrate, rest);
  made[Constituent::sugars] = share(c.sugars, all.high);
  made[Constituent::fibre] = share(c.fibre, all.high);
  const Range& sugars = made[Constituent::sugars];
  const Range& fibre = made[Constituent::fibre];
  const bool known = !std::isnan(c.sugars) && !std::isnan(c.fibre);
  made[Constituent::other_carbohydrate] = clamped(known ? all.low - sugars.low - fibre.low : 0, all.high - sugars.low - fibre.low);
}

/// The rest of it as in the table, where the fat is another.
void set_fat(Matter& made, double fat) {
  const double was = made[Constituent::fat].middle();
  if (was >= 1 || std::abs(was - fat) < 0.005) return;
  const double factor = (1 - fat) / (1 - was);
  made.energy_kcal.low = std::max(0.0, made.energy_kcal.low + (fat - was) * richest_kcal * factor);
  made.energy_kcal.high = std::max(0.0, made.energy_kcal.high + (fat - was) * richest_kcal);
  for (Range& part : made.parts) part = clamped(part.low * factor, part.high * factor);
  made[Constituent::fat] = {fat, fat};
}

}  // namespace

std::string_view constituent_name(Constituent constituent) {
  constexpr std::array<std::string_view, constituents> names{"water", "fat",  "protein", "sugars", "other carbohydrate",
                                                             "fibre", "ash", "salt",    "alcohol"};
  return names[static_cast<std::size_t>(constituent)];
}

Matter unknown_matter() {
  Matter made;
  made.parts.fill({0, 1});
  made.energy_kcal = {0, richest_kcal};
  made.melting_j = most_melting_j;
  return made;
}

Matter matter_of(const food::Food& food, std::optional<double> fat) {
  const Composition& c = food.per_100_g;
  const double sum = reported(c.water) + reported(c.protein) + reported(c.fat) + reported(c.carbohydrate) +
                     reported(c.ash) + reported(c.alcohol);
  const double rest = std::max(0.0, 1 - sum / 100);
  Matter made;
  made[Constituent::water] = share(c.water, rest);
  made[Constituent::fat] = share(c.fat, rest);
  made[Constituent::protein] = share(c.protein, rest);
  made[Constituent::ash] = share(c.ash, rest);
  made[Constituent::alcohol] = share(c.alcohol, rest);
  split_carbohydrate(c, rest, made);
  const Range sodium = share(c.sodium_mg / 1000, made[Constituent::ash].high / salt_of_sodium);
  made[Constituent::salt] = clamped(sodium.low * salt_of_sodium, sodium.high * salt_of_sodium);
  made.energy_kcal = std::isnan(c.energy_kcal) ? Range{0, richest_kcal} : Range{c.energy_kcal / 100, c.energy_kcal / 100};
  if (fat) set_fat(made, *fat);
  made.melting_j = melting_j(food, made[Constituent::fat].high);
  return made;
}

void add(Matter& mix, const Matter& other, double share) {
  for (std::size_t i = 0; i < constituents; ++i) {
    mix.parts[i].low += share * other.parts[i].low;
    mix.parts[i].high += share * other.parts[i].high;
  }
  mix.energy_kcal.low += share * other.energy_kcal.low;
  mix.energy_kcal.high += share * other.energy_kcal.high;
  mix.melting_j += share * other.melting_j;
  mix.off += share * other.off;
  mix.gone += share * other.gone;
  mix.took_water += share * other.took_water;
  mix.took_fat += share * other.took_fat;
}

namespace {

/// What was in a gram is now in less than a gram.
void concentrate(Matter& matter, double share) {
  const double factor = 1 / (1 - share);
  for (Range& part : matter.parts) part = clamped(part.low * factor, part.high * factor);
  matter.energy_kcal = {matter.energy_kcal.low * factor, matter.energy_kcal.high * factor};
  matter.melting_j *= factor;
  matter.off *= factor;
  matter.gone *= factor;
  matter.took_water *= factor;
  matter.took_fat *= factor;
}

}  // namespace

bool take_off(Matter& matter, double share) {
  if (share <= 0) return true;
  Range& water = matter[Constituent::water];
  Range& alcohol = matter[Constituent::alcohol];
  const double can_go = water.high + alcohol.high + matter.took_water;
  if (share > can_go + slack || share >= 1) return false;
  const Range before = water;
  water.low = std::max(0.0, before.low - share);
  water.high = std::max(0.0, std::min(before.high, before.high - share + alcohol.high));
  alcohol.low = 0;
  concentrate(matter, share);
  return true;
}

void take_unknown(Matter& matter, double share) {
  if (share <= 0) return;
  if (share >= 1) {
    matter = unknown_matter();
    return;
  }
  for (Range& part : matter.parts) part.low = std::max(0.0, part.low - share);
  matter.energy_kcal.low = std::max(0.0, matter.energy_kcal.low - share * richest_kcal);
  concentrate(matter, share);
}

Range left_of(const Matter& matter) {
  const double off = std::min(matter.off, matter[Constituent::water].high + matter[Constituent::alcohol].high);
  return {std::max(0.0, 1 - off - matter.gone), 1 + matter.took_water + matter.took_fat};
}

Range share_of(const Matter& matter, Constituent constituent) {
  const Range& part = matter[constituent];
  if (matter.off <= 0 && matter.gone <= 0 && matter.took_water <= 0 && matter.took_fat <= 0) return part;
  const bool volatile_part = constituent == Constituent::water || constituent == Constituent::alcohol;
  const double off = std::min(matter.off, matter[Constituent::water].high + matter[Constituent::alcohol].high);
  const double took = matter.took_water + matter.took_fat;
  const double more = constituent == Constituent::water ? matter.took_water : constituent == Constituent::fat ? matter.took_fat : 0;
  const double least = volatile_part ? 1 - off - matter.gone : 1 - matter.gone;
  const double low = part.low - matter.gone - (volatile_part ? off : 0);
  const double other_took = took - more;
  const double lowest = least + other_took > 0 ? low / (least + other_took) : 0;
  const double fewest = volatile_part ? 1 - matter.gone : 1 - off - matter.gone;
  const double highest = fewest + more > none_left ? (part.high + more) / (fewest + more) : 1;
  return clamped(lowest, highest);
}

Matter weighed_anew(const Matter& matter) {
  Matter made;
  for (std::size_t i = 0; i < constituents; ++i) made.parts[i] = share_of(matter, static_cast<Constituent>(i));
  made.energy_kcal = energy_of(matter);
  made.melting_j = matter.melting_j / std::max(none_left, left_of(matter).low);
  return made;
}

Range energy_of(const Matter& matter) {
  const Range left = left_of(matter);
  const double low = std::max(0.0, matter.energy_kcal.low - matter.gone * richest_kcal) / left.high;
  const double high = left.low > none_left ? (matter.energy_kcal.high + matter.took_fat * richest_kcal) / left.low : richest_kcal;
  return {low, std::min(high, richest_kcal)};
}

}  // namespace tamis::flow
