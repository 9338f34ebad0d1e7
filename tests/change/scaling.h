#ifndef TESTS_CHANGE_SCALING_H
#define TESTS_CHANGE_SCALING_H

#include "core/change/scale.h"
#include "tests/change/converting.h"

namespace tamis::tests {

using change::ScaleWish;

inline ScaleWish by_factor(const std::string& factor) { return {ScaleWish::By::factor, factor, ""}; }
inline ScaleWish by_portions(const std::string& portions) { return {ScaleWish::By::portions, portions, ""}; }

inline Result scaled(const std::string& xml, const ScaleWish& wish, const fiche::Kitchen& kitchen = {},
                     fiche::Library& library = fiche::empty_library()) {
  const auto document = document_of(xml);
  change::Scaled made = change::scale(*document, kitchen, library, wish);
  return {format::write(made.document), std::move(made.findings), std::move(made.misread)};
}

inline std::string with_yield(const std::string& yield, const std::string& inside = "<ingredient food=\"milk-whole\">300 g</ingredient>",
                       const std::string& root = "") {
  std::string xml = fiche_around(inside, root);
  return xml.replace(xml.find("<component"), 0, yield);
}

inline const char* message_of(const base::Finding* finding) { return finding == nullptr ? "" : finding->message.c_str(); }

/// A kitchen with the machines, moulds and ovens that the tests speak of.
inline fiche::Kitchen small_kitchen(const std::string& more = "") {
  return kitchen_of("<kitchen xmlns=\"urn:tamis:fiche:1\" name=\"K\" lang=\"en\" units=\"metric\"" + more +
                    "><oven id=\"o\" trays=\"2\"/><machine id=\"m\" kind=\"mixer\" name=\"mixer\" least=\"0.4 l\" "
                    "most=\"4.5 l\"/><mould id=\"frame\" name=\"frame\" shape=\"frame\" count=\"2\" length=\"36 cm\" "
                    "width=\"26 cm\" height=\"4 cm\"/><mould id=\"ring-26\" name=\"tart ring\" shape=\"ring\" count=\"4\" "
                    "diameter=\"26 cm\" height=\"3.5 cm\"/></kitchen>");
}

}  // namespace tamis::tests

#endif
