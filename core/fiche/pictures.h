#ifndef CORE_FICHE_PICTURES_H
#define CORE_FICHE_PICTURES_H

#include <cstddef>
#include <string>
#include <string_view>

#include "core/base/result.h"

namespace tamis::fiche {

/// The pictures a fiche may speak of: a Library that can read them is this too.
class Pictures {
 public:
  virtual ~Pictures() = default;
  /// The bytes of the picture that `reference` ("img/tart.jpg") names, seen from the file `from_path`. Refuses with rule
  ///   escaping-reference   it leaves the library's root, symlinks resolved
  ///   dangling-reference   there is no such file
  ///   unreadable-picture   it is no PNG or JPEG by its first bytes, or has more than most_picture_bytes
  /// The span of a refusal is empty.
  virtual base::Result<std::string> picture(std::string_view from_path, std::string_view reference) = 0;
};

inline constexpr std::size_t most_picture_bytes = std::size_t{2} << 20U;

/// "image/png" or "image/jpeg" by the first bytes (W3C PNG 5.2; ITU-T T.81 B.1.1.3, start of image and a marker); "" for
/// anything else.
std::string_view picture_type(std::string_view bytes);

}  // namespace tamis::fiche

#endif
