#include "core/base/says.h"
#include "core/base/utf8.h"
#include "core/tally/allergens.h"

namespace tamis::tally {
namespace {

using fiche::At;

std::string_view singular(std::string_view name) {
  return name.ends_with('s') && name.size() > 4 ? name.substr(0, name.size() - 1) : name;
}

food::Allergens named_in(std::string_view words) {
  const std::string text = base::lower(words);
  food::Allergens out = 0;
  if (text.empty()) return out;
  for (const food::AllergenName& name : food::allergen_names()) {
    const std::string french = base::lower(name.french);
    if (base::says(text, {singular(name.id), singular(name.english), singular(french)})) out |= name.bit;
  }
  return out;
}

}  // namespace

std::optional<StatedAllergens> stated_allergens(const fiche::Document& document, fiche::Node statement,
                                                std::string_view language) {
  std::vector<std::string_view> unknown;
  StatedAllergens out;
  const fiche::Attr contains = document.find(statement, At::contains);
  out.may = food::read_allergens(document.get(statement, At::may_contain), unknown);
  const bool reads = language.starts_with("en") || language.starts_with("fr");
  if (reads) out.words = named_in(document.all_text(statement));
  if (contains == fiche::none && !reads) return std::nullopt;
  out.contains = contains == fiche::none ? out.words : food::read_allergens(document.attribute_value(contains), unknown);
  return out;
}

}  // namespace tamis::tally
