#ifndef CORE_FICHE_REFERENCE_H
#define CORE_FICHE_REFERENCE_H

#include <memory>
#include <optional>
#include <string_view>
#include <vector>

#include "core/base/finding.h"
#include "core/fiche/document.h"
#include "core/fiche/library.h"

namespace tamis::fiche {

/// "../base/custard.fiche.xml#custard": a file and the component in it.
struct FileReference {
  std::string_view file;  ///< "" for the document itself
  std::string_view part;  ///< "" for the whole fiche
};
FileReference split_reference(std::string_view reference);

/// What a reference leads to. Exactly one of document and fault is there.
struct Target {
  const Document* document = nullptr;
  std::shared_ptr<const Document> held;  ///< keeps another file's document alive
  std::optional<base::Finding> fault;    ///< why the library does not give it
};
Target follow(const Document& from, std::string_view file, Library& library);

/// The components of a fiche, in order.
std::vector<Node> components_of(const Document& document);
/// The component of that id, or none.
Node component_named(const Document& document, std::string_view id);

}  // namespace tamis::fiche

#endif
