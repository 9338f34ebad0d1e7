#ifndef CORE_CHANGE_CONVERT_H
#define CORE_CHANGE_CONVERT_H

#include <optional>
#include <string>
#include <vector>

#include "core/base/finding.h"
#include "core/fiche/document.h"
#include "core/fiche/kitchen.h"
#include "core/measure/unit.h"

namespace tamis::change {

struct ConvertWish {
  measure::System units = measure::System::metric;  ///< metric, us or imperial
  enum class By : unsigned char { mass, volume, both, as_written } by = By::as_written;
  /// Oven figures for this mode ("fan", "static"); empty: as written.
  std::string oven;
  /// Reader's market ("US", "GB", "FR", "DE"): names what can be bought there. Empty: foods stay.
  std::string market;
};

/// What a conversion gives: the document, edited in place, and what the reader must know (rounding beyond tolerance,
/// no density, what remains a risk), pointing into the original source.
struct Converted {
  fiche::Document document;
  std::vector<base::Finding> findings;
};

/// Every amount, temperature and length in another system, those inside sentences too. The author's figure stays
/// beside each as was / was-…; where it is already in the wanted system it is put back and the mark goes.
Converted convert(const fiche::Document& document, const fiche::Kitchen& kitchen, const ConvertWish& wish);

}  // namespace tamis::change

#endif
