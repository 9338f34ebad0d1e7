#ifndef CORE_PHYSICS_MEDIA_H
#define CORE_PHYSICS_MEDIA_H

#include <span>
#include <string_view>

#include "core/physics/range.h"

namespace tamis::physics {

/// What a food stands in while it cools or warms.
struct Medium {
  std::string_view id;       ///< "blast-chiller"
  std::string_view english;  ///< as it stands in a sentence: "in a blast chiller"
  Range celsius;             ///< how warm it usually is; NaN where it has to be said (ovens)
  Range coefficient;         ///< of the surface, W/(m² K), radiation and contact included
  Range moving;              ///< of it, what moving air alone takes (for what evaporates into it); 0 in water
  std::string_view source;
};

std::span<const Medium> media();
const Medium* medium_named(std::string_view id);

}  // namespace tamis::physics

#endif
