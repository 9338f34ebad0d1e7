#ifndef CORE_RULES_CONTENTS_H
#define CORE_RULES_CONTENTS_H

#include <optional>
#include <string>
#include <vector>

#include "core/rules/rule.h"

namespace tamis::rules {

/// What went into what a step works on, from its ingredients up through the steps before it.
struct Part {
  int thing = -1;  ///< index into Flow::things: an ingredient or a part of one
  const food::Food* food = nullptr;      ///< null when nobody knows it
  std::optional<flow::Grams> grams;      ///< that go in here; empty where the fiche does not let us know
};
struct Contents {
  std::vector<Part> parts;
  bool whole = true;  ///< nothing of it was divided or comes from another file: the parts stand to each other as they went in
  /// Grams of all that are of that role; empty where one is not known. Nothing of it is 0.
  [[nodiscard]] std::optional<flow::Grams> grams_of(food::Role role) const;
  [[nodiscard]] bool has(food::Role role) const;
  [[nodiscard]] bool has(std::string_view food_id) const;
};
Contents contents_of(const Check& check, int step);

/// Whether the fiche has a line of such a food at all.
bool lists(const Check& check, food::Role role);

/// The titles that a step stands under, its component's and the fiche's, in lower case.
std::string titles_of(const Check& check, int step);

/// The table's food that a kitchen's own one is like, or its own id. "" for no food.
std::string_view general_id(const Check& check, const food::Food* food);

/// Whether what a step works on is mostly water and not mostly fat, from its ingredients up through the steps before it:
/// at least half of it water, less than a quarter fat. False where any part, its amount or its composition is not known.
bool is_watery(const Check& check, int step);

}  // namespace tamis::rules

#endif
