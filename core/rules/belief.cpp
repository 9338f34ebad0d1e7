#include "core/rules/belief.h"

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

std::span<const Belief> beliefs() { return rows; }
std::span<const PortionBelief> portion_beliefs() { return portions; }

}  // namespace tamis::rules
