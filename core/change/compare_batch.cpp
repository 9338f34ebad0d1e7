#include "core/change/compare_batch.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/change/compare_figure.h"
#include "core/change/subject.h"

namespace tamis::change {

using fiche::At;
using fiche::El;
using fiche::Node;
using measure::Kind;

namespace {

/// An ingredient's amounts in the two fiches.
struct Twin {
  double was = 0, is = 0;
  Measured figure;
  Node component = fiche::none;  // in the new fiche
};

std::optional<Measured> amount_of_ingredient(const Side& side, Node ingredient) {
  const fiche::Statement* statement = side.fiche().statement(ingredient);
  if (statement == nullptr || !side.document().get(ingredient, At::per).empty()) return std::nullopt;
  Measured figure = figure_of(side, *statement);
  const bool usable = figure.ends && std::isfinite(figure.ends->low) && std::isfinite(figure.ends->high) &&
                      figure.ends->low > 0;
  if (!usable) return std::nullopt;
  return figure;
}

std::vector<Twin> twins_of(const Side& from, const Side& to, const Pairs& pairs) {
  std::vector<Twin> out;
  for (const fiche::Ingredient& ingredient : to.fiche().ingredients) {
    const Node old = pairs.in_old(ingredient.node);
    if (old == fiche::none) continue;
    const auto was = amount_of_ingredient(from, old);
    auto is = amount_of_ingredient(to, ingredient.node);
    if (!was || !is || was->kind != is->kind) continue;
    const auto middle = [](const Measured& figure) { return (figure.ends->low + figure.ends->high) / 2; };
    out.push_back({middle(*was), middle(*is), *std::move(is), ingredient.component});
  }
  return out;
}

std::size_t followers(const std::vector<Twin>& twins, double factor, const Side& from, const Side& to) {
  return static_cast<std::size_t>(std::count_if(twins.begin(), twins.end(), [&](const Twin& twin) {
    return same_within(twin.was, twin.is, factor, twin.figure, from, to);
  }));
}

/// The factor most amounts follow; of several the first, nearest to 1 among those that only the amounts have.
double best_factor(const std::vector<Twin>& twins, std::vector<double> stated, const Side& from, const Side& to) {
  std::vector<double> own;
  for (const Twin& twin : twins) own.push_back(twin.is / twin.was);
  std::sort(own.begin(), own.end(), [](double a, double b) { return std::abs(std::log(a)) < std::abs(std::log(b)); });
  stated.insert(stated.begin(), 1);
  stated.insert(stated.end(), own.begin(), own.end());
  double best = 1;
  std::size_t most = 0;
  for (const double factor : stated) {
    if (const std::size_t count = followers(twins, factor, from, to); count > most) {
      most = count;
      best = factor;
    }
  }
  return most >= 2 && 3 * most >= 2 * twins.size() && std::abs(std::log(best)) > 0.01 ? best : 1;
}

double number_of(const Side& side, Node node, At at) {
  const fiche::Statement* statement = node == fiche::none ? nullptr : side.fiche().statement(node, at);
  return statement != nullptr && statement->amount && statement->amount->has_figure()
             ? statement->amount->middle_base().approximate()
             : 0;
}

/// What the documents themselves say of it.
std::vector<double> stated_factors(const Side& from, const Side& to) {
  std::vector<double> out;
  const auto add = [&](double was, double is) {
    if (was > 0 && is > 0) out.push_back(is / was);
  };
  const double was = number_of(from, from.document().root(), At::scaled_by);
  const double is = number_of(to, to.document().root(), At::scaled_by);
  if (was > 0 || is > 0) add(was > 0 ? was : 1, is > 0 ? is : 1);
  if (!from.fiche().yields.empty() && !to.fiche().yields.empty())
    for (const At at : {At::portions, At::pieces})
      add(number_of(from, from.fiche().yields.front(), at), number_of(to, to.fiche().yields.front(), at));
  return out;
}

std::optional<double> grams_of(const Side& side, Node ingredient) {
  const auto figure = amount_of_ingredient(side, ingredient);
  if (!figure) return std::nullopt;
  const double value = (figure->ends->low + figure->ends->high) / 2;
  if (figure->kind == Kind::mass) return value;
  if (figure->kind == Kind::volume && figure->grams_per_ml) return value * *figure->grams_per_ml;
  if (figure->kind != Kind::count || figure->food == nullptr) return std::nullopt;
  const auto piece = food::piece_of(*figure->food, side.document().get(ingredient, At::size));
  return piece ? std::optional(value * piece->grams.approximate()) : std::nullopt;
}

}  // namespace

Batch::Batch(const Side& from, const Side& to, const Pairs& pairs) : to_(to) {
  const std::vector<Twin> twins = twins_of(from, to, pairs);
  whole_ = best_factor(twins, stated_factors(from, to), from, to);
  if (to.fiche().components.size() < 2) return;
  for (const Node component : to.fiche().components) {
    std::vector<Twin> own;
    for (const Twin& twin : twins)
      if (twin.component == component) own.push_back(twin);
    if (followers(own, whole_, from, to) * 2 >= own.size()) continue;
    const double factor = best_factor(own, {}, from, to);
    components_.emplace(component, factor);
  }
}

double Batch::factor_at(Node in_new) const {
  const Node component = to_.around(in_new, El::component);
  const auto own = components_.find(component);
  return own == components_.end() ? whole_ : own->second;
}

double share_of_component(const Side& side, Node ingredient) {
  const Node component = side.around(ingredient, El::component);
  double total = 0;
  double own = 0;
  for (const fiche::Ingredient& one : side.fiche().ingredients) {
    const std::string_view purpose = side.document().get(one.node, At::purpose);
    if (one.component != component || !(purpose.empty() || purpose == "food")) continue;
    const auto grams = grams_of(side, one.node);
    if (!grams) return 0;
    total += *grams;
    if (one.node == ingredient) own = *grams;
  }
  return total > 0 ? own / total : 0;
}

}  // namespace tamis::change
