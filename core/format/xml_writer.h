#ifndef CORE_FORMAT_XML_WRITER_H
#define CORE_FORMAT_XML_WRITER_H

#include <string>

#include "core/fiche/document.h"

namespace tamis::format {

/// A document read from XML, edits put in. See write().
std::string write_xml(const fiche::Document& document);

}  // namespace tamis::format

#endif
