#ifndef TESTS_CHANGE_SWAPPING_H
#define TESTS_CHANGE_SWAPPING_H

#include "core/change/swap.h"
#include "core/fiche/fiche.h"
#include "tests/change/converting.h"

namespace tamis::tests {

/// What swap_foods() makes of the text; a fault fails the test.
inline Result swapped(const std::string& xml, const std::string& words, const fiche::Kitchen& kitchen = {}) {
  const auto document = document_of(xml);
  const auto wishes = change::read_swaps(words);
  CAPTURE(words);
  REQUIRE(wishes);
  auto made = change::swap_foods(*document, kitchen, *wishes);
  if (!made) FAIL(made.fault().message);
  return {format::write(made->document), std::move(made->findings)};
}

/// "message → advice" of the fault.
inline std::string refused(const std::string& xml, const std::string& words, const fiche::Kitchen& kitchen = {}) {
  const auto wishes = change::read_swaps(words);
  if (!wishes) return wishes.fault().message + " → " + wishes.fault().advice;
  const auto made = change::swap_foods(*document_of(xml), kitchen, *wishes);
  return made ? "" : made.fault().message + " → " + made.fault().advice;
}

/// The amount that stands on the line of that food now, no-break spaces as spaces; "none" where there is no such line.
inline std::string amount_of(const Result& result, const std::string& food) {
  const auto document = document_of(result.xml);
  const fiche::Kitchen kitchen;
  const fiche::Fiche fiche = fiche::read_fiche(*document, kitchen);
  for (const fiche::Ingredient& line : fiche.ingredients) {
    if (line.food_id == food) return with_spaces(std::string(base::trimmed(document->direct_text(line.node))));
  }
  return "none";
}

}  // namespace tamis::tests

#endif
