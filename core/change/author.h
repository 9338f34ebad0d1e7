#ifndef CORE_CHANGE_AUTHOR_H
#define CORE_CHANGE_AUTHOR_H

#include <vector>

#include "core/base/finding.h"
#include "core/fiche/document.h"
#include "core/fiche/kitchen.h"

namespace tamis::change {

struct Restored {
  fiche::Document document;
  std::vector<base::Finding> findings;  ///< changed-after-conversion
};

/// The author's own document: what conversions wrote is taken back, word for word. A document that was never converted
/// comes back as it is.
///
/// A figure that somebody changed since (it differs from the kept one by more than kitchen rounding could do) stays,
/// and the kept one goes; it is respelled exactly (in g, ml, mm, °C) where its bare name would mean something else
/// under the author's units.
Restored restore_author(const fiche::Document& document, const fiche::Kitchen& kitchen);

/// One element's text and attributes as the author wrote them; what stood in for a food goes too.
void restore_element(fiche::Document& document, fiche::Node node);

}  // namespace tamis::change

#endif
