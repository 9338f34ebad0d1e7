#ifndef CORE_RULES_FILE_REFERENCE_H
#define CORE_RULES_FILE_REFERENCE_H

#include <string_view>
#include <vector>

#include "core/fiche/document.h"
#include "core/fiche/reference.h"
#include "core/rules/structure.h"

namespace tamis::rules {

using fiche::component_named;
using fiche::components_of;
using fiche::FileReference;
using fiche::follow;
using fiche::split_reference;
using fiche::Target;

/// Ids of the ingredients and their parts in a node.
std::vector<std::string_view> ids_in(const fiche::Document& document, fiche::Node n);

/// The attributes of a component and all in it that name another file's component (component/@from,
/// ingredient/@from).
std::vector<fiche::Attr> references_in(const fiche::Document& document, fiche::Node n);

/// The same for the document at hand, without a walk.
std::vector<fiche::Attr> references_in(const fiche::Document& document, const Structure& structure);

}  // namespace tamis::rules

#endif
