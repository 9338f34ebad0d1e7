#include "core/physics/media.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace tamis::physics {
namespace {

constexpr std::array table{
#define MEDIUM(id, words, t1, t2, t3, h1, h2, h3, c1, c2, c3, source) \
  Medium{id, words, {t1, t2, t3}, {h1, h2, h3}, {c1, c2, c3}, source},
#include "core/physics/media.inc"
};

}  // namespace

std::span<const Medium> media() { return table; }

const Medium* medium_named(std::string_view id) {
  const auto found = std::find_if(table.begin(), table.end(), [id](const Medium& medium) { return medium.id == id; });
  return found == table.end() ? nullptr : &*found;
}

}  // namespace tamis::physics
