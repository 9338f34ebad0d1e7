#include "core/flow/flow.h"

namespace tamis::flow {

Flow read_flow(const fiche::Fiche& fiche, fiche::Library& library) {
  static_cast<void>(fiche);
  static_cast<void>(library);
  return {};
}

}  // namespace tamis::flow
