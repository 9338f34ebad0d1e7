#include <array>
#include <cmath>

#include "core/change/swap_kind.h"
#include "core/physics/gelatine.h"

namespace tamis::change {

using base::Ratio;
using fiche::At;

namespace {

constexpr std::array<std::string_view, 4> gelatines = {"gelatine-leaf", "gelatine-powder", "gelatine-fish", "gelatine-mass"};
const Ratio gelatine_in_mass{1, 6};  // one part to five of water, as the table has it

bool fits(std::string_view from, Foods to) {
  return to.size() == 1 && is_one_of(from, gelatines) && is_one_of(to[0], gelatines);
}

struct Strength {
  Ratio bloom;
  bool stated;
};

Strength bloom_of(const SwapTask& task, std::string_view said, std::string_view food_id) {
  if (const auto read = measure::read_number(said, task.own.fiche->reading); !said.empty() && read && *read > 0)
    return {*read, true};
  const auto* own = task.kitchen.own_food(food_id);
  if (own != nullptr && own->bloom && *own->bloom > 0) return {*in_100_g(*own->bloom), true};
  return {static_cast<std::int64_t>(physics::usual_bloom), false};
}

bool by_linear_rule(const fiche::Kitchen& kitchen) {
  const auto set = kitchen.rule_values.find("food-swapped");
  return set != kitchen.rule_values.end() && set->second == "linear";
}

Ratio share_of_gelatine(std::string_view general) { return general == "gelatine-mass" ? gelatine_in_mass : Ratio(1); }

Ratio factor_of(const Ratio& from, const Ratio& to, physics::BloomRule rule) {
  constexpr double places = 1e9;
  const double factor = physics::gelatine_factor(from.approximate(), to.approximate(), rule);
  return {std::llround(factor * places), static_cast<std::int64_t>(places)};
}

void tell_the_cook(WorkedOut& out, std::string_view from, std::string_view to) {
  if (to == "gelatine-leaf" && from != to) {
    out.english =
        "soften the leaves in plenty of cold water and wring them out; water stated for the old one is then not needed";
    out.french = "ramollir les feuilles dans beaucoup d'eau froide et les essorer ; l'eau prévue pour l'autre n'est plus utile";
  } else if (to == "gelatine-mass") {
    out.english = "five parts of water are in it already: leave out the water for soaking";
    out.french = "cinq parts d'eau y sont déjà : laisser de côté l'eau d'hydratation";
  } else if (from != to) {
    out.english = "soak it in five to six times its weight of cold water, all of which goes in: a leaf brings about as much";
    out.french = "l'hydrater dans cinq à six fois son poids d'eau froide, qui entre toute : une feuille en apporte autant";
  }
  if (to == "gelatine-fish") {
    out.english += "; it sets and melts colder than that of pork or beef, and is an allergen";
    out.french += " ; elle prend et fond plus froid que celle de porc ou de bœuf, et c'est un allergène";
  }
}

base::Result<WorkedOut> work_out(const SwapTask& task) {
  const Stand& stand = task.stands[0];
  const std::string_view from = general_food(task.kitchen, task.own.food_id);
  const std::string_view to = general_food(task.kitchen, stand.id);
  const Strength old = bloom_of(task, task.own.get(At::bloom), task.own.food_id);
  const Strength made = bloom_of(task, stand.figure, stand.id);
  const bool strength_is_wrong = !stand.figure.empty() && (!made.stated || made.bloom < 50 || made.bloom > 325);
  if (strength_is_wrong) {
    return bad_swap("\"" + stand.figure + "\" is no strength of gelatine", "give it in bloom, 80 to 300: " + stand.id + ":200");
  }
  const bool linear = by_linear_rule(task.kitchen);
  const physics::BloomRule rule = linear ? physics::BloomRule::linear : physics::BloomRule::square_root;
  const Ratio strength = factor_of(old.bloom, made.bloom, rule);
  WorkedOut out;
  StandIn& line = out.lines.emplace_back();
  line.factor = strength * share_of_gelatine(from) / share_of_gelatine(to);
  line.sets.emplace_back(At::bloom, plain(made.bloom));
  line.english = first_name(stand.food->english) + ", " + plain(made.bloom) + " bloom";
  line.french = first_name(stand.food->french) + ", " + plain(made.bloom) + " bloom";
  const auto taken = [](const Strength& one) { return plain(one.bloom) + (one.stated ? "" : ", taken as usual,"); };
  out.how = factor_text(line.factor) + " times its weight (" + taken(old) + " bloom to " + taken(made) +
            (linear ? ", by the linear rule)" : ", by the square root)");
  tell_the_cook(out, from, to);
  out.source = linear ? "linear rule C1 x B1 = C2 x B2, as some makers print it (common practice); chosen by the kitchen"
                      : "Gelatin Handbook (GMIA), C1 x B1^0.5 = C2 x B2^0.5 (from memory)";
  return out;
}

}  // namespace

/// The setting power stays: mass times the root of the strengths, or times the strengths where the kitchen's rule
/// food-swapped is set to "linear". A strength nobody states is 200 bloom (common practice: gold leaf).
extern const SwapKind swap_gelatine;
const SwapKind swap_gelatine = {
    .what = "gelatine: leaf, powder or mass, and one strength to another (bloom)",
    .example = "leaf=gelatine-powder:225",
    .fits = fits,
    .moves_water = false,
    .work_out = work_out,
};

}  // namespace tamis::change
