#include "core/fiche/kitchen.h"

#include <algorithm>

#include "core/food/sure_allergens.h"

namespace tamis::fiche {

std::optional<measure::System> system_named(std::string_view name) {
  if (name == "metric") return measure::System::metric;
  if (name == "us") return measure::System::us;
  if (name == "imperial") return measure::System::imperial;
  return std::nullopt;
}

std::string_view Kitchen::general_id(std::string_view id) const {
  const OwnFood* own = own_food(id);
  return own != nullptr && !own->like.empty() ? std::string_view(own->like) : id;
}

std::string_view Kitchen::trade_verb(std::string_view word) const {
  const auto found = verbs.find(word);
  return found == verbs.end() ? word : std::string_view(found->second);
}

const Kitchen::OwnFood* Kitchen::own_food(std::string_view id) const {
  const auto found = std::find_if(foods.begin(), foods.end(), [id](const auto& own) { return own->id == id; });
  return found == foods.end() ? nullptr : found->get();
}

const food::Food* Kitchen::find_food(std::string_view id) const {
  if (const OwnFood* own = own_food(id)) return &own->food;
  return food::food_by_id(id);
}

const Kitchen::Sale* Kitchen::sale_of(std::string_view fiche_id) const {
  const auto found = std::find_if(sales.begin(), sales.end(), [&](const Sale& sale) { return sale.fiche == fiche_id; });
  return found == sales.end() ? nullptr : &*found;
}

const Kitchen::Price* price_on(const std::vector<Kitchen::Price>& prices, std::string_view day) {
  const Kitchen::Price* found = nullptr;
  for (const Kitchen::Price& price : prices) {
    if (!day.empty() && price.since > day) continue;
    if (found == nullptr || price.since > found->since) found = &price;
  }
  return found;
}

HeldAllergens allergens_held(const food::Food& food, const Kitchen::OwnFood* own) {
  if (own != nullptr && !own->specified.empty()) return {own->contains, 0, own->may_contain};
  HeldAllergens held;
  held.sure = food::sure_allergens(food) | (own == nullptr ? 0 : own->contains);
  held.assumed = food.allergens & ~held.sure;
  held.may = own == nullptr ? 0 : own->may_contain;
  return held;
}

}  // namespace tamis::fiche
