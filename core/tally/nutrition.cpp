#include "core/tally/nutrition.h"

#include <algorithm>
#include <cmath>

#include "core/tally/energy.h"

namespace tamis::tally {
namespace {

constexpr std::string_view names[nutrients] = {"energy_kj", "energy_kcal", "fat",  "saturates", "carbohydrate",       "sugars",
                                               "fibre",     "protein",     "salt", "calories",  "total_carbohydrate", "sodium_mg"};

/// Of 100 g; not a number where the table does not know.
std::array<double, nutrients> per_100_g(const food::Composition& food) {
  EnergyGivers givers;
  givers.fat = food.fat;
  givers.protein = food.protein;
  // A table that gives carbohydrate by difference has the fibre in it; where there is none of the one there is none of
  // the other.
  givers.fibre = food.carbohydrate == 0 ? 0 : food.fibre;
  givers.carbohydrate = std::max(0.0, food.carbohydrate - givers.fibre);
  if (std::isnan(givers.fibre)) givers.carbohydrate = givers.fibre;
  givers.alcohol = std::isnan(food.alcohol) ? 0 : food.alcohol;  // not reported of foods that have none
  // Both are measured, sugars apart from what is left over: the part is not more than the whole.
  const double sugars = food.sugars > givers.carbohydrate ? givers.carbohydrate : food.sugars;
  const Energy energy = eu_energy(givers);
  const double calories = us_calories(food.protein, food.carbohydrate, food.fat, givers.alcohol);
  return {energy.kj,     energy.kcal,  food.fat,                   food.saturated, givers.carbohydrate, sugars,
          givers.fibre,  food.protein, 2.5 * food.sodium_mg / 1000, calories,       food.carbohydrate,   food.sodium_mg};
}

class Sum {
 public:
  explicit Sum(const Makeup& makeup) : makeup_(makeup) {}

  Nutrition run() {
    for (const Entry& entry : makeup_.entries) add(entry);
    std::stable_sort(out_.lacking.begin(), out_.lacking.end(), [](const Lacking& a, const Lacking& b) { return a.grams > b.grams; });
    return std::move(out_);
  }

 private:
  void add(const Entry& entry) {
    if (!entry.counts) return;
    if (!entry.listed) {
      // A part has no line of its own, and what it is a part of says it.
      if (entry.part_of < 0) out_.not_weighed.emplace_back(entry.name);
      return;
    }
    if (!(entry.served > 0)) return;
    Nutrition::Of& of = component(entry.component);
    of.grams += entry.served;
    Lacking lacking{entry.name, entry.served, {}};
    std::array<double, nutrients> values{};
    values.fill(std::nan(""));
    if (entry.food != nullptr) values = per_100_g(entry.food->per_100_g);
    for (std::size_t i = 0; i < nutrients; ++i) {
      for (Figures* figures : {&out_.whole, &of.figures}) {
        Figure& figure = (*figures)[i];
        (std::isnan(values[i]) ? figure.lacking : figure.amount) +=
            std::isnan(values[i]) ? entry.served : entry.served * values[i] / 100;
      }
      if (std::isnan(values[i])) lacking.what.push_back(static_cast<Nutrient>(i));
    }
    if (lacking.what.empty()) return;
    const auto same = [&](const Lacking& one) { return one.food == lacking.food && one.what == lacking.what; };
    const auto found = std::find_if(out_.lacking.begin(), out_.lacking.end(), same);
    if (found == out_.lacking.end()) {
      out_.lacking.push_back(std::move(lacking));
    } else {
      found->grams += lacking.grams;
    }
  }

  Nutrition::Of& component(fiche::Node node) {
    for (Nutrition::Of& one : out_.components) {
      if (one.component == node) return one;
    }
    out_.components.push_back({node, 0, {}});
    return out_.components.back();
  }

  const Makeup& makeup_;
  Nutrition out_;
};

}  // namespace

std::string_view nutrient_name(Nutrient nutrient) { return names[static_cast<std::size_t>(nutrient)]; }

Nutrition nutrition_of(const Makeup& makeup) { return Sum(makeup).run(); }

}  // namespace tamis::tally
