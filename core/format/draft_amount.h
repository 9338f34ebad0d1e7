#ifndef CORE_FORMAT_DRAFT_AMOUNT_H
#define CORE_FORMAT_DRAFT_AMOUNT_H

#include <optional>
#include <string>
#include <string_view>

#include "core/base/utf8.h"
#include "core/format/draft_figures.h"
#include "core/format/draft_recipe.h"

namespace tamis::format::draft {

/// A line on the desk, read from the front; what is understood is taken off `rest`.
struct IngredientLine {
  Desk& desk;
  base::Span line;
  std::string rest;
  DraftIngredient made;
  std::optional<measure::Amount> amount;  ///< the first statement
  bool unclear = false;                   ///< an amount stands there that cannot be read; that is asked already

  void drop(std::size_t bytes) { rest = std::string(base::trimmed(std::string_view(rest).substr(bytes))); }
};

Figure amount_in(const IngredientLine& reader, std::string_view text);
bool is_set(const IngredientLine& reader, Set set, std::string_view text);
/// The two texts with `between` where neither is empty.
std::string joined(std::string_view a, std::string_view b, std::string_view between);
void add_prep(IngredientLine& reader, std::string_view text);

/// "250 g butter", "2 x 400 g tins", "250 g / 9 oz", "pinch of salt": takes the amount off the front.
void take_amount_front(IngredientLine& reader);
/// "butter 250g", "salt to taste": takes it off the end.
void take_amount_back(IngredientLine& reader);
/// A second statement of the same amount: mass beside a count, or another system.
void state_second(IngredientLine& reader, const measure::Amount& second, std::string_view text);

}  // namespace tamis::format::draft

#endif
