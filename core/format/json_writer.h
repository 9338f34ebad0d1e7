#ifndef CORE_FORMAT_JSON_WRITER_H
#define CORE_FORMAT_JSON_WRITER_H

#include <string>

#include "core/fiche/document.h"

namespace tamis::format {

/// A document read from JSON, edits put in. See write().
std::string write_json(const fiche::Document& document);

}  // namespace tamis::format

#endif
