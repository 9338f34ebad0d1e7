#include "core/tally/allergen_table.h"

#include <algorithm>

#include "core/food/allergen_bits.h"

namespace tamis::tally {
namespace {

using Level = AllergenFound::Level;
using Stated = AllergenFound::Stated;

void add(AllergenFound& found, AllergenFound::Source source) {
  const auto same = [&](const AllergenFound::Source& one) {
    return one.food == source.food && one.level == source.level && one.specified == source.specified;
  };
  found.level = std::max(found.level, source.level);
  if (std::none_of(found.sources.begin(), found.sources.end(), same)) found.sources.push_back(std::move(source));
}

}  // namespace

std::string_view level_name(Level level) {
  switch (level) {
    case Level::none: return "none";
    case Level::may: return "may";
    case Level::option: return "option";
    case Level::assumed: return "assumed";
    case Level::contains: return "contains";
  }
  return "";
}

AllergenTable allergen_table(const fiche::Document& document, const fiche::Kitchen& kitchen, fiche::Library& library,
                             std::string_view language) {
  AllergenTable out;
  StatedAllergens stated;
  const fiche::Node statement = document.root() == fiche::none ? fiche::none : document.child(document.root(), fiche::El::allergens);
  if (statement != fiche::none) {
    const auto read = stated_allergens(document, statement, language);
    out.statement = read.has_value();
    if (read) stated = *read;
  }
  constexpr food::Allergens grain = food::allergen::gluten | food::allergen::wheat;
  const std::vector<AllergenLine> lines = allergen_lines(document, kitchen, library);
  for (const AllergenLine& line : lines) {
    if (line.unknown) out.unknown.push_back(line.food);
  }
  for (const food::AllergenName& name : food::allergen_names()) {
    AllergenFound found;
    found.name = &name;
    for (const AllergenLine& line : lines) {
      const Level level = (line.sure & name.bit) != 0    ? (line.option ? Level::option : Level::contains)
                          : (line.usual & name.bit) != 0 ? (line.option ? Level::option : Level::assumed)
                          : (line.may & name.bit) != 0   ? Level::may
                                                         : Level::none;
      if (level != Level::none) add(found, {level, line.food, line.specified, false, line.where});
    }
    for (const fiche::Kitchen::CrossContact& contact : kitchen.cross_contacts) {
      if ((contact.may_contain & name.bit) != 0) add(found, {Level::may, contact.where, {}, true, fiche::none});
    }
    if ((stated.may & name.bit) != 0) found.stated = Stated::may;
    // Wheat is stated as gluten in the EU and as wheat in the US.
    const bool as_grain = (name.bit & grain) != 0 && found.level == Level::contains && (stated.contains & grain) != 0;
    if ((stated.contains & name.bit) != 0 || as_grain) found.stated = Stated::contains;
    std::stable_sort(found.sources.begin(), found.sources.end(),
                     [](const auto& a, const auto& b) { return a.level > b.level; });
    if (found.level != Level::none || found.stated != Stated::no) out.found.push_back(std::move(found));
  }
  return out;
}

}  // namespace tamis::tally
