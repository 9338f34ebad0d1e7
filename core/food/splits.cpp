#include "core/food/splits.h"

#include <algorithm>

#include "core/base/ratio.h"
#include "core/base/utf8.h"

namespace tamis::food {

std::vector<Split> splits_of(const Food& food) {
  std::vector<Split> out;
  for (std::string_view rest = food.splits; !rest.empty();) {
    const std::size_t plus = std::min(rest.find('+'), rest.size());
    const std::string_view part = base::trimmed(rest.substr(0, plus));
    rest.remove_prefix(std::min(plus + 1, rest.size()));
    const std::size_t space = part.find(' ');
    if (space == part.npos) continue;
    const auto figure = base::Ratio::parse(part.substr(space + 1, part.find(' ', space + 1) - space - 1));
    if (figure) out.push_back({part.substr(0, space), figure->approximate()});
  }
  return out;
}

bool splits_by_mass(const Food& food) { return food.splits_source.find("100 g") != std::string_view::npos; }

}  // namespace tamis::food
