#include <array>

#include "core/change/swap_kind.h"

namespace tamis::change {

using base::Ratio;

namespace {

struct Yeast {
  std::string_view food;
  Ratio as_fresh;  ///< grams of it that raise as one of fresh
  std::string_view english, french;
};

// Common practice: 100 of fresh, 40 of active dry, 33 of instant.
const std::array<Yeast, 3> yeasts{{
    {"yeast-fresh",
     {1, 1},
     "crumble it into cool liquid; it brings its own water",
     "l'émietter dans un liquide frais ; elle apporte son eau"},
    {"yeast-active-dry",
     {2, 5},
     "wake it in five times its weight of the recipe's water at 38 to 43 °C until it foams",
     "la réveiller dans cinq fois son poids de l'eau de la recette à 38–43 °C jusqu'à ce qu'elle mousse"},
    {"yeast-instant",
     {1, 3},
     "it goes into the flour, not into hot or icy water",
     "elle va dans la farine, ni dans l'eau chaude ni dans l'eau glacée"},
}};

const Yeast* yeast_of(std::string_view id) {
  for (const Yeast& yeast : yeasts) {
    if (yeast.food == id) return &yeast;
  }
  return nullptr;
}

bool fits(std::string_view from, Foods to) {
  return to.size() == 1 && from != to[0] && yeast_of(from) != nullptr && yeast_of(to[0]) != nullptr;
}

base::Result<WorkedOut> work_out(const SwapTask& task) {
  const Stand& stand = task.stands[0];
  if (!stand.figure.empty()) {
    return bad_swap("yeast has no figure such as \"" + stand.figure + "\"", "write the food alone: " + stand.id);
  }
  const Yeast& old = *yeast_of(general_food(task.kitchen, task.own.food_id));
  const Yeast& made = *yeast_of(general_food(task.kitchen, stand.id));
  WorkedOut out;
  StandIn& line = out.lines.emplace_back();
  line.factor = made.as_fresh / old.as_fresh;
  line.english = first_name(stand.food->english);
  line.french = first_name(stand.food->french);
  out.how = factor_text(line.factor) + " times its weight";
  out.english = made.english;
  out.french = made.french;
  out.source = "common practice: 100 g of fresh yeast raise as 40 g of active dry or 33 g of instant";
  return out;
}

}  // namespace

/// The raising power stays.
extern const SwapKind swap_yeast;
const SwapKind swap_yeast = {
    .what = "yeast: fresh, active dry, instant",
    .example = "yeast=yeast-instant",
    .fits = fits,
    .moves_water = false,
    .work_out = work_out,
};

}  // namespace tamis::change
