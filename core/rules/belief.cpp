#include "core/rules/belief.h"

#include <algorithm>
#include <iterator>

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;
using measure::Kind;

constexpr Belief rows[] = {
#define BELIEF(element, attribute, kind, least, most, what, source) \
  {El::element, At::attribute, Kind::kind, least, most, what, source},
#include "core/rules/belief.inc"
};

constexpr PortionBelief portions[] = {
#define PORTION(role, most, source) {food::Role::role, most, source},
#include "core/rules/belief.inc"
};

}  // namespace

std::span<const Belief> beliefs_about(El element) {
  const auto* const first = std::find_if(std::begin(rows), std::end(rows), [&](const Belief& row) { return row.element == element; });
  const auto* const last = std::find_if(first, std::end(rows), [&](const Belief& row) { return row.element != element; });
  return {first, last};
}
std::span<const PortionBelief> portion_beliefs() { return portions; }

}  // namespace tamis::rules
