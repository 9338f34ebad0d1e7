#include "core/rules/contents.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/base/utf8.h"
#include "core/rules/figure_value.h"

namespace tamis::rules {
namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

class Watery {
 public:
  explicit Watery(const Check& check) : check_(check), open_{}, seen_(check.flow.steps.size(), 0) {}

  bool watery(int step) {
    go_into(step);
    while (!open_.empty()) {
      const int here = open_.back();
      open_.pop_back();
      for (const int use : check_.flow.steps[at(here)].takes) add(check_.flow.things[at(check_.flow.uses[at(use)].thing)]);
    }
    return known_ && grams_ > 0 && water_ >= grams_ / 2 && fat_ < grams_ / 4;
  }

 private:
  void go_into(int step) {
    if (step < 0 || seen_[at(step)] != 0) return;
    seen_[at(step)] = 1;
    open_.push_back(step);
  }

  void add(const flow::Thing& thing) {
    if (thing.maker >= 0) return go_into(thing.maker);
    if (thing.ingredient < 0 || !thing.counts) return;
    const food::Food* food = check_.fiche.ingredients[at(thing.ingredient)].food;
    const std::optional<double> grams = grams_of(thing);
    known_ = known_ && food != nullptr && grams && !std::isnan(food->per_100_g.water);
    if (!known_) return;
    grams_ += *grams;
    water_ += *grams * food->per_100_g.water / 100;
    if (!std::isnan(food->per_100_g.fat)) fat_ += *grams * food->per_100_g.fat / 100;
  }

  /// By the flow, else the stated mass or volume.
  [[nodiscard]] std::optional<double> grams_of(const flow::Thing& thing) const {
    if (thing.grams) return thing.grams->middle();
    const fiche::Ingredient& ingredient = check_.fiche.ingredients[at(thing.ingredient)];
    if (ingredient.amount < 0) return std::nullopt;
    const auto& amount = check_.fiche.statements[at(ingredient.amount)].amount;
    if (!amount || !amount->has_figure()) return std::nullopt;
    const double stated = (lowest_of(*amount) + highest_of(*amount)) / 2;
    if (amount->kind == measure::Kind::mass) return stated;
    const auto density = ingredient.food == nullptr ? std::nullopt : food::density_of(*ingredient.food);
    if (amount->kind != measure::Kind::volume || !density) return std::nullopt;
    return stated * density->grams_per_ml.approximate();
  }

  const Check& check_;
  std::vector<int> open_;
  std::vector<char> seen_;
  bool known_ = true;
  double grams_ = 0;
  double water_ = 0;
  double fat_ = 0;
};

}  // namespace

bool is_watery(const Check& check, int step) { return Watery(check).watery(step); }

std::optional<flow::Grams> Contents::grams_of(food::Role role) const {
  flow::Grams sum;
  for (const Part& part : parts) {
    if (part.food == nullptr) return std::nullopt;
    if (part.food->role != role) continue;
    if (!part.grams) return std::nullopt;
    sum.low += part.grams->low;
    sum.high += part.grams->high;
  }
  return sum;
}

bool Contents::has(food::Role role) const {
  return std::any_of(parts.begin(), parts.end(),
                     [role](const Part& part) { return part.food != nullptr && part.food->role == role; });
}

bool Contents::has(std::string_view food_id) const {
  return std::any_of(parts.begin(), parts.end(),
                     [food_id](const Part& part) { return part.food != nullptr && part.food->id == food_id; });
}

Contents contents_of(const Check& check, int step) {
  Contents out;
  std::vector<int> open{step};
  std::vector<char> seen(check.flow.steps.size(), 0);
  while (!open.empty()) {
    const int here = open.back();
    open.pop_back();
    if (here < 0 || seen[at(here)] != 0) continue;
    seen[at(here)] = 1;
    for (const int u : check.flow.steps[at(here)].takes) {
      const flow::Use& use = check.flow.uses[at(u)];
      const flow::Thing& thing = check.flow.things[at(use.thing)];
      if (use.instead || !thing.counts) continue;
      if (thing.maker >= 0) {
        out.whole = out.whole && use.take == flow::Use::Take::all;
        open.push_back(thing.maker);
      } else if (thing.ingredient >= 0) {
        const food::Food* food = check.fiche.ingredients[at(thing.ingredient)].food;
        out.parts.push_back({use.thing, food, thing.trace ? flow::Grams{} : use.grams});
      } else {
        out.whole = false;
      }
    }
  }
  return out;
}

bool lists(const Check& check, food::Role role) {
  return std::any_of(check.fiche.ingredients.begin(), check.fiche.ingredients.end(),
                     [role](const fiche::Ingredient& line) { return line.food != nullptr && line.food->role == role; });
}

std::string titles_of(const Check& check, int step) {
  const fiche::Node component = check.flow.steps[at(step)].component;
  std::string out(check.fiche.title);
  if (component != fiche::none) out += " " + std::string(check.document.get(component, fiche::At::title));
  return base::lower(out);
}

std::string_view general_id(const Check& check, const food::Food* food) {
  return food == nullptr ? std::string_view() : check.kitchen.general_id(food->id);
}

}  // namespace tamis::rules
