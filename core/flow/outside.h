#ifndef CORE_FLOW_OUTSIDE_H
#define CORE_FLOW_OUTSIDE_H

#include <optional>
#include <string>
#include <vector>

#include "core/flow/flow.h"

namespace tamis::flow {

/// Files that are being read, each from the one before: what bounds a round of files, and how deep it goes.
using Chain = std::vector<std::string>;
constexpr std::size_t deepest_chain = 8;

/// What each component kept in another file comes to, as this fiche takes it (component/@take, its overrides);
/// empty where the file, the component or the mass cannot be known. By its place in Fiche::components.
std::vector<std::optional<Grams>> weigh_outside(const fiche::Fiche& fiche, fiche::Library& library, Chain& chain);

/// read_flow(), for a fiche that another one takes in with a component's overrides.
Flow read_flow_within(const fiche::Fiche& fiche, fiche::Library& library, Chain& chain, const fiche::Fiche* around,
                      fiche::Node around_component);

}  // namespace tamis::flow

#endif
