#include <algorithm>

#include "core/flow/melting.h"
#include "core/flow/point.h"

namespace tamis::flow {
namespace {

constexpr double ice_melts_from_c = -3;  // the sweetest mixes begin earlier, but hold little ice there

/// Of one thing: its temperature at this end, and between which its heat capacity lies, J/K.
struct Weighed {
  double celsius;
  Range capacity;
};

/// The least that the mean of them can be: what is colder than it counts as much as it can, what is warmer as little.
double least_mean(const std::vector<Weighed>& all) {
  double mean = open_end;
  for (std::size_t round = 0; round <= all.size(); ++round) {
    double sum = 0, weight = 0;
    for (const Weighed& one : all) {
      const double capacity = one.celsius < mean ? one.capacity.high : one.capacity.low;
      sum += capacity * one.celsius;
      weight += capacity;
    }
    const double next = sum / weight;
    if (next >= mean) break;
    mean = next;
  }
  return mean;
}

double most_mean(std::vector<Weighed> all) {
  for (Weighed& one : all) one.celsius = -one.celsius;
  return -least_mean(all);
}

double middle_of(const Range& celsius) {
  if (std::isinf(celsius.low) && std::isinf(celsius.high)) return 20;
  return std::isinf(celsius.low) ? celsius.high : std::isinf(celsius.high) ? celsius.low : celsius.middle();
}

/// What may be, and what must be, ice in it.
Range ice_j(const Point& point, double grams) {
  if (point.celsius.low >= -1) return {0, 0};
  const double water = point.matter[Constituent::water].high;
  const double all = grams * water * melting_of_ice_j;
  return {point.celsius.high <= -10 ? 0.5 * all : 0, all};  // at -10 °C more than half of it is ice, but for the sweetest
}

/// How much of each is not known: it comes to something between them.
MixedHeat between(const std::vector<Going>& goings) {
  MixedHeat made;
  made.celsius = {open_end, -open_end};
  for (const Going& going : goings) {
    if (going.grams == 0) continue;
    made.celsius = hull_of(made.celsius, going.point->celsius);
    made.solid = made.solid || going.point->solid;
  }
  return made;
}

/// By how much melting can cool it: not below where ice melts, and fat only melts in what becomes warmer than it was.
void melt(MixedHeat& made, const std::vector<Going>& goings, const Range& capacity) {
  Range ice{0, 0};
  double fat = 0, coldest = open_end;
  for (const Going& going : goings) {
    const Point& point = *going.point;
    if (going.grams <= 0) continue;
    coldest = std::min(coldest, point.celsius.low);
    const Range frozen = ice_j(point, going.grams);
    ice = {ice.low + frozen.low, ice.high + frozen.high};
    if (point.solid && point.celsius.low < std::min(fat_is_melted_c, made.celsius.high)) fat += going.grams * point.matter.melting_j;
  }
  const auto cooled = [](double celsius, double floor, double by) { return celsius <= floor ? celsius : std::max(floor, celsius - by); };
  const double low = made.celsius.low;
  made.celsius.high = std::max(low, cooled(made.celsius.high, 0, ice.low / capacity.high));
  made.celsius.low = cooled(made.celsius.low, ice_melts_from_c, ice.high / capacity.low);
  made.celsius.low = cooled(made.celsius.low, coldest, fat / capacity.low);
  made.celsius.high = std::max(made.celsius.high, made.celsius.low);
  made.melting_k = low - made.celsius.low;
}

}  // namespace

MixedHeat mix_celsius(const std::vector<Going>& goings) {
  if (std::any_of(goings.begin(), goings.end(), [](const Going& going) { return std::isnan(going.grams); })) return between(goings);
  MixedHeat made;
  std::vector<Weighed> low, high;
  Range capacity{0, 0};
  for (const Going& going : goings) {
    const Point& point = *going.point;
    if (going.grams <= 0) continue;
    const Range heat = specific_heat(point.matter, middle_of(point.celsius));
    const Range here{going.grams * heat.low, going.grams * heat.high};
    low.push_back({point.celsius.low, here});
    high.push_back({point.celsius.high, here});
    capacity = {capacity.low + here.low, capacity.high + here.high};
    made.solid = made.solid || (point.solid && point.matter.melting_j > 0);
  }
  if (low.empty()) return {};
  const auto open = [](const Weighed& one) { return std::isinf(one.celsius); };
  const bool open_low = std::any_of(low.begin(), low.end(), open);
  const bool open_high = std::any_of(high.begin(), high.end(), open);
  made.celsius = {open_low ? -open_end : least_mean(low), open_high ? open_end : most_mean(high)};
  if (low.size() > 1 && !open_low && !open_high) melt(made, goings, capacity);
  if (made.celsius.low >= fat_is_melted_c) made.solid = false;
  return made;
}

}  // namespace tamis::flow
