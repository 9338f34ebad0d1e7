#include <algorithm>
#include <array>

#include "core/flow/point.h"

namespace tamis::flow {
namespace {

/// a + b t + c t², kJ/(kg K), t in °C.
struct Row {
  Constituent constituent;
  double a, b, c;
};
constexpr std::array rows{
    Row{Constituent::water, 4.1289, -9.0864e-5, 5.4731e-6},
    Row{Constituent::protein, 2.0082, 1.2089e-3, -1.3129e-6},
    Row{Constituent::fat, 1.9842, 1.4733e-3, -4.8008e-6},
    Row{Constituent::sugars, 1.5488, 1.9625e-3, -5.9399e-6},
    Row{Constituent::other_carbohydrate, 1.5488, 1.9625e-3, -5.9399e-6},
    Row{Constituent::fibre, 1.8459, 1.8306e-3, -4.6509e-6},
    Row{Constituent::ash, 1.0926, 1.8896e-3, -3.6817e-6},
    Row{Constituent::alcohol, 2.44, 0, 0},  // ethanol at 25 °C: CRC Handbook of Chemistry and Physics (from memory)
};
// What is not accounted for is no better a store of heat than water, no worse than ash.
constexpr double least = 1.09, most = 4.18;

}  // namespace

Range specific_heat(const Matter& matter, double celsius) {
  const double t = std::clamp(celsius, 0.0, 150.0);
  double known = 0, sum = 0;
  for (const Row& row : rows) {
    const double share = matter[row.constituent].low;
    known += share;
    sum += share * (row.a + (row.b + row.c * t) * t);
  }
  const double open = std::max(0.0, 1 - known);
  // Below 0 °C its water may be ice, which holds half as much: 2.0623 + 6.0769e-3 t (the same table).
  const double ice = celsius < 0 ? matter[Constituent::water].high * (4.13 - (2.0623 + 6.0769e-3 * std::max(celsius, -40.0))) : 0;
  return {sum - ice + open * least, sum + open * most};
}

}  // namespace tamis::flow
