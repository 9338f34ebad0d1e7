#ifndef CORE_FORMAT_DRAFT_WRITE_H
#define CORE_FORMAT_DRAFT_WRITE_H

#include <string>

#include "core/format/draft_recipe.h"

namespace tamis::format::draft {

/// The recipe as a fiche in XML, laid out.
std::string write_fiche(const Desk& desk, const Recipe& recipe);

}  // namespace tamis::format::draft

#endif
