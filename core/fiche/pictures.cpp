#include "core/fiche/pictures.h"

namespace tamis::fiche {

std::string_view picture_type(std::string_view bytes) {
  if (bytes.starts_with("\x89PNG\r\n\x1A\n")) return "image/png";
  if (bytes.starts_with("\xFF\xD8\xFF")) return "image/jpeg";
  return {};
}

}  // namespace tamis::fiche
