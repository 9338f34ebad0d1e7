#include <array>
#include <catch2/catch.hpp>

#include "core/rules/trade_figures.h"

using namespace tamis;
namespace figures = rules::figures;

namespace {

struct Row {
  const char* id;  ///< of the reference
  double ours;     ///< °C
  double theirs_f, within_f;
};

// A confectionery table of sugar stages in °F (sugar-056 to sugar-065 of the reference), with the spread between tables.
const std::array rows{
    Row{"sugar-056", figures::sugar_thread.low, 230, 6},     Row{"sugar-057", figures::sugar_thread.high, 234, 6},
    Row{"sugar-058", figures::sugar_firm_ball.low, 244, 2},  Row{"sugar-059", figures::sugar_firm_ball.high, 248, 2},
    Row{"sugar-060", figures::sugar_hard_ball.low, 250, 2},  Row{"sugar-061", figures::sugar_hard_ball.high, 265, 2},
    Row{"sugar-062", figures::sugar_hard_crack.low, 300, 6}, Row{"sugar-063", figures::sugar_hard_crack.high, 310, 6},
    Row{"sugar-064", figures::sugar_caramel.low, 320, 6},    Row{"sugar-065", figures::sugar_caramel.high, 338, 6},
};

}  // namespace

TEST_CASE("the stages of boiled sugar are those of the confectionery table", "[against]") {
  for (const Row& row : rows) {
    CAPTURE(row.id);
    CHECK(row.ours * 1.8 + 32 == Approx(row.theirs_f).margin(row.within_f));
  }
}
