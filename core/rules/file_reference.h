#ifndef CORE_RULES_FILE_REFERENCE_H
#define CORE_RULES_FILE_REFERENCE_H

#include <memory>
#include <optional>
#include <string_view>
#include <vector>

#include "core/base/finding.h"
#include "core/fiche/document.h"
#include "core/fiche/library.h"
#include "core/rules/structure.h"

namespace tamis::rules {

/// "../base/custard.fiche.xml#custard": a file and the component in it.
struct FileReference {
  std::string_view file;  ///< "" for the document itself
  std::string_view part;  ///< "" for the whole fiche
};
FileReference split_reference(std::string_view reference);

/// What a reference leads to. Exactly one of document and fault is there.
struct Target {
  const fiche::Document* document = nullptr;
  std::shared_ptr<const fiche::Document> held;  ///< keeps another file's document alive
  std::optional<base::Finding> fault;           ///< why the library does not give it
};
Target follow(const fiche::Document& from, std::string_view file, fiche::Library& library);

/// The components of a fiche, in order.
std::vector<fiche::Node> components_of(const fiche::Document& document);
/// The component of that id, or none.
fiche::Node component_named(const fiche::Document& document, std::string_view id);

/// Ids of the ingredients and their parts in a node.
std::vector<std::string_view> ids_in(const fiche::Document& document, fiche::Node n);

/// The attributes of a component and all in it that name another file's component (component/@from,
/// ingredient/@from).
std::vector<fiche::Attr> references_in(const fiche::Document& document, fiche::Node n);

/// The same for the document at hand, without a walk.
std::vector<fiche::Attr> references_in(const fiche::Document& document, const Structure& structure);

}  // namespace tamis::rules

#endif
