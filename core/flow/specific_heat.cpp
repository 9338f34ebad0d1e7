#include <algorithm>
#include <array>
#include <utility>

#include "core/flow/point.h"
#include "core/food/thermal.h"

namespace tamis::flow {
namespace {

constexpr std::array rows{
    std::pair{Constituent::water, food::Constituent::water},
    std::pair{Constituent::protein, food::Constituent::protein},
    std::pair{Constituent::fat, food::Constituent::fat},
    std::pair{Constituent::sugars, food::Constituent::carbohydrate},
    std::pair{Constituent::other_carbohydrate, food::Constituent::carbohydrate},
    std::pair{Constituent::fibre, food::Constituent::fibre},
    std::pair{Constituent::ash, food::Constituent::ash},
    std::pair{Constituent::alcohol, food::Constituent::alcohol},
};
// What is not accounted for is no better a store of heat than water, no worse than ash.
constexpr double least = 1.09, most = 4.18;

}  // namespace

Range specific_heat(const Matter& matter, double celsius) {
  const double t = std::max(celsius, 0.0);
  double known = 0, sum = 0;
  for (const auto& [constituent, of_food] : rows) {
    const double share = matter[constituent].low;
    known += share;
    sum += share * food::specific_heat(of_food, t);
  }
  const double open = std::max(0.0, 1 - known);
  // Below 0 °C its water may be ice, which holds half as much.
  const double ice = celsius < 0 ? matter[Constituent::water].high * (4.13 - food::specific_heat(food::Constituent::ice, celsius)) : 0;
  return {sum - ice + open * least, sum + open * most};
}

}  // namespace tamis::flow
