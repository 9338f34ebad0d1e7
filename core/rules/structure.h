#ifndef CORE_RULES_STRUCTURE_H
#define CORE_RULES_STRUCTURE_H

#include <vector>

#include "core/fiche/document.h"
#include "core/fiche/vocabulary.h"

namespace tamis::rules {

/// A document held against the vocabulary, in one walk, for all rules about what may stand where.
/// What is inside an element of unknown name is looked at, but where it stands is not judged: one wrong name is one
/// fault.
struct Structure {
  struct Element {
    fiche::Node node;
    const fiche::ElementRule* rule;
  };
  struct Attribute {
    fiche::Attr attribute;
    fiche::Node node;
    const fiche::AttributeRule* rule;
  };
  std::vector<Element> elements;                ///< those with a name of ours, in document order
  std::vector<fiche::Node> unknown_elements;
  std::vector<fiche::Node> misplaced_elements;  ///< known or foreign, where they may not stand; also in `elements`
  std::vector<Attribute> attributes;            ///< those that their element knows
  std::vector<fiche::Attr> unknown_attributes;  ///< of a known element; a house's own (prefix:name) are not among them
  std::vector<fiche::Node> stray_texts;         ///< text that is not blank in an element that holds none
};

Structure read_structure(const fiche::Document& document);

}  // namespace tamis::rules

#endif
