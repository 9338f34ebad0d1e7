#include <array>

#include "core/change/swap_kind.h"
#include "core/change/sweetness.h"

namespace tamis::change {

using base::Ratio;

namespace {

struct Sugar {
  std::string_view food;
  double sweetness;  ///< of its dry matter, sucrose 1 (common practice)
};

constexpr std::array<Sugar, 7> sugars{{{"sugar-white", 1.0},
                                       {"sugar-invert", 1.25},
                                       {"syrup-glucose", 0.5},
                                       {"glucose-powder", 0.4},
                                       {"dextrose", 0.7},
                                       {"fructose", 1.5},
                                       {"trehalose", 0.45}}};

bool fits(std::string_view from, Foods to) {
  return to.size() == 1 && from != to[0] && sweetness_of(from) && sweetness_of(to[0]);
}

base::Result<WorkedOut> work_out(const SwapTask& task) {
  const Stand& stand = task.stands[0];
  if (!stand.figure.empty()) {
    return bad_swap("sugar has no figure such as \"" + stand.figure + "\"",
                    "write the food alone: " + stand.id + "; the kitchen file may state a food of your own");
  }
  const auto old = in_100_g(task.own.food->per_100_g.water);
  const auto made = in_100_g(stand.food->per_100_g.water);
  if (!old || !made) {
    return bad_swap("how much water is in " + first_name((made ? task.own.food : stand.food)->english) + " is not known",
                    "take one whose solids are known: tamis foods shows them");
  }
  WorkedOut out;
  StandIn& line = out.lines.emplace_back();
  line.factor = (100 - *old) / (100 - *made);
  line.english = first_name(stand.food->english);
  line.french = first_name(stand.food->french);
  out.how = factor_text(line.factor) + " times its weight, for the same solids (" + plain(100 - *old) + " % to " +
            plain(100 - *made) + " %)";
  const std::string_view to = general_food(task.kitchen, stand.id);
  const bool browns = to == "sugar-invert" || to == "dextrose" || to == "fructose";
  out.english = browns
                    ? "it browns sooner, holds water and does not crystallise: bake cooler, and hold the boil lower in caramel"
                    : "it does not cream with butter as crystals do, and gives another crust";
  out.french = browns ? "il colore plus vite, retient l'eau et ne cristallise pas : cuire moins chaud"
                      : "il ne crème pas avec le beurre comme des cristaux, et donne une autre croûte";
  if (to == "sugar-white") {
    out.english = "it can crystallise where the other kept it from that";
    out.french = "il peut cristalliser là où l'autre l'en empêchait";
  }
  out.source = "solids by the table of foods: " + std::string(task.own.food->composition_source) + ", " +
               std::string(stand.food->composition_source);
  out.sweetness = true;
  return out;
}

}  // namespace

std::optional<double> sweetness_of(std::string_view food_id) {
  for (const Sugar& sugar : sugars) {
    if (sugar.food == food_id) return sugar.sweetness;
  }
  return std::nullopt;
}

/// The solids stay; the water it brings is taken off the component's water, and how sweet it is then is said.
extern const SwapKind swap_sugars;
const SwapKind swap_sugars = {
    .what = "sugar: invert, glucose syrup, dextrose ... by solids; the water follows",
    .example = "sugar=sugar-invert",
    .fits = fits,
    .moves_water = true,
    .work_out = work_out,
};

}  // namespace tamis::change
