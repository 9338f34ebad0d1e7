#ifndef CORE_CLI_REVISIONS_H
#define CORE_CLI_REVISIONS_H

#include <memory>
#include <string>

#include "core/base/result.h"
#include "core/fiche/document.h"

namespace tamis::cli {

/// The name of the folder, beside a fiche, that keeps what it was.
inline constexpr const char* revisions_folder = "revisions";

/// The last released revision of a fiche that its folder keeps: a fiche of the same id in the same folder, or anywhere
/// under its subfolder "revisions", with state "released" and a revision number lower than the fiche's own; of several
/// the one with the highest number. A fiche without a number is later than all that have one. File names are free.
///
/// Refuses with rule "no-released-revision", or as the reader refuses. Files in the folder that cannot be read are
/// passed by.
base::Result<std::shared_ptr<const fiche::Document>> last_released(const fiche::Document& fiche);

}  // namespace tamis::cli

#endif
