#include <array>

#include "core/change/swap_kind.h"

namespace tamis::change {

using base::Ratio;
using fiche::At;

namespace {

constexpr std::array<std::string_view, 4> butters = {"butter-unsalted", "butter-salted", "butter-dry-84", "butter-clarified"};

bool fits(std::string_view from, Foods to) {
  return to.size() == 1 && is_one_of(from, butters) && is_one_of(to[0], butters) && from != to[0];
}

std::optional<Ratio> fat_of(const SwapTask& task, std::string_view said, std::string_view id, const food::Food& food) {
  if (!said.empty()) return percent_of(said, task.own.fiche->reading);
  const auto* own = task.kitchen.own_food(id);
  if (own != nullptr && own->fat_percent) return in_100_g(*own->fat_percent);
  return in_100_g(food.per_100_g.fat);
}

base::Result<WorkedOut> work_out(const SwapTask& task) {
  const Stand& stand = task.stands[0];
  const std::string_view to = general_food(task.kitchen, stand.id);
  const auto old = fat_of(task, task.own.get(At::fat), task.own.food_id, *task.own.food);
  const auto made = fat_of(task, stand.figure, stand.id, *stand.food);
  if (!made || !old || *made < 60) {
    return bad_swap("\"" + stand.figure + "\" is no fat content of butter", "give it in percent: butter-dry-84:84");
  }
  WorkedOut out;
  out.fat_stays = true;
  StandIn& line = out.lines.emplace_back();
  line.factor = *old / *made;
  if (!stand.figure.empty()) line.sets.emplace_back(At::fat, plain(*made) + " %");
  line.english = first_name(stand.food->english);
  line.french = first_name(stand.food->french);
  out.how = factor_text(line.factor) + " times its weight, for the same fat (" + plain(*old) + " % to " + plain(*made) + " %)";
  if (to == "butter-clarified") {
    out.english = "the water and the milk solids of the butter are not in it: it neither browns nor binds as butter does";
    out.french = "l'eau et les matières sèches du lait n'y sont pas : il ne blondit ni ne lie comme le beurre";
  } else if (general_food(task.kitchen, task.own.food_id) == "butter-clarified") {
    out.english = "it brings water and milk solids: it foams and browns, and a dough takes less liquid";
    out.french = "il apporte de l'eau et des matières sèches : il mousse et blondit, une pâte prend moins de liquide";
  } else if (to == "butter-salted") {
    out.english = "it brings salt: take it off the recipe's";
    out.french = "il apporte du sel : le retirer de la recette";
  }
  out.source = "fat by the table of foods: " + std::string(task.own.food->composition_source) + ", " +
               std::string(stand.food->composition_source);
  return out;
}

}  // namespace

/// The fat stays; water, milk solids and salt that come or go are said.
extern const SwapKind swap_butter;
const SwapKind swap_butter = {
    .what = "butter: clarified, 84 %, salted or not, for the same fat",
    .example = "butter=butter-clarified",
    .fits = fits,
    .moves_water = false,
    .work_out = work_out,
};

}  // namespace tamis::change
