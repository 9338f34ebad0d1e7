#include "core/cli/turn.h"

#include <algorithm>
#include <optional>

namespace tamis::cli {
namespace {

using base::Ratio;
using measure::Kind;
using measure::System;

base::Finding refusal(std::string_view rule, std::string message, std::string advice) {
  base::Finding finding;
  finding.rule = rule;
  finding.message = std::move(message);
  finding.advice = std::move(advice);
  return finding;
}

/// Grams of one ml, one piece, one gram; nothing where the food does not say.
std::optional<Ratio> grams_per_base(Kind kind, const food::Food* food) {
  if (kind == Kind::mass) return Ratio(1);
  if (food == nullptr) return std::nullopt;
  if (kind == Kind::volume) {
    const auto density = food::density_of(*food);
    return density ? std::optional(density->grams_per_ml) : std::nullopt;
  }
  if (kind != Kind::count) return std::nullopt;
  const auto piece = food::piece_of(*food);
  return piece ? std::optional(piece->grams) : std::nullopt;
}

bool crosses_by_mass(Kind kind) { return kind == Kind::mass || kind == Kind::volume || kind == Kind::count; }

base::Finding no_way(Kind from, Kind to, const food::Food* food) {
  const std::string kinds =
      std::string(measure::kind_name(from)) + " does not turn into " + std::string(measure::kind_name(to));
  if (!crosses_by_mass(from) || !crosses_by_mass(to)) return refusal("wrong-kind", kinds, "");
  if (food == nullptr) return refusal("wrong-kind", kinds + " without the food", "add --food NAME");
  const bool count = from == Kind::count || to == Kind::count;
  return refusal("wrong-kind",
                 kinds + ": " + (count ? "the mass of a piece" : "the density") + " of " + std::string(food->id) +
                     " is not known",
                 "weigh it");
}

System asked_system(const measure::Unit& unit) {
  return unit.system == System::us || unit.system == System::imperial ? unit.system : System::metric;
}

measure::Rounded as_measured(Ratio in_base, const measure::Unit& to, const Turning& turning) {
  const measure::KitchenTools& tools = *turning.tools;
  measure::Tolerance tolerance;
  if (turning.food != nullptr) tolerance.share = food::tolerance_of(turning.food->role);
  const auto scale = to.id == "degf" ? measure::Scale::fahrenheit : measure::Scale::celsius;
  switch (to.kind) {
    case Kind::mass:
      return measure::round_mass(in_base, asked_system(to), tools, tolerance);
    case Kind::volume:
      return measure::round_volume(in_base, asked_system(to), tools, tolerance);
    case Kind::length:
      return measure::round_length(in_base, asked_system(to), tools);
    case Kind::temperature:
      return turning.oven ? measure::round_oven(in_base, scale, tools)
                          : measure::round_food_temperature(in_base, scale, tools);
    default:
      break;
  }
  measure::Rounded as_is;
  as_is.amount = measure::amount_of((in_base - to.offset) / to.to_base, to);
  as_is.exact = in_base;
  return as_is;
}

}  // namespace

base::Result<Turned> turn(Ratio in_base, Kind from, const measure::Unit& to, const Turning& turning) {
  Turned turned;
  turned.unit = &to;
  if (from != to.kind) {
    const auto there = grams_per_base(from, turning.food);
    const auto back = grams_per_base(to.kind, turning.food);
    if (!there || !back) return no_way(from, to.kind, turning.food);
    in_base = in_base * *there / *back;
    turned.exact = false;
  }
  turned.value = (in_base - to.offset) / to.to_base;
  turned.exact = turned.exact && !to.rough;
  if (!turned.value.ok())
    return refusal("unreadable-amount", "the figure is too large or too fine to work with", "");
  const measure::Rounded rounded = as_measured(in_base, to, turning);
  turned.kitchen = measure::write_amount(rounded.amount, turning.writing);
  if (!rounded.within) turned.warning = rounded.better;
  return turned;
}

std::string sources_of(const measure::Amount& amount, const measure::Unit& to, const food::Food* food) {
  std::vector<std::string_view> sources;
  const auto add = [&sources](std::string_view source) {
    if (!source.empty() && std::find(sources.begin(), sources.end(), source) == sources.end())
      sources.push_back(source);
  };
  for (const auto* side : {&amount.low, &amount.high})
    for (const measure::Quantity& quantity : *side) add(quantity.unit->source);
  add(to.source);
  if (food != nullptr && amount.kind != to.kind) {
    const bool volume = amount.kind == Kind::volume || to.kind == Kind::volume;
    const bool count = amount.kind == Kind::count || to.kind == Kind::count;
    if (const auto density = volume ? food::density_of(*food) : std::nullopt) add(density->source);
    if (const auto piece = count ? food::piece_of(*food) : std::nullopt) add(piece->source);
  }
  std::string out;
  for (const std::string_view source : sources) out += (out.empty() ? "" : "; ") + std::string(source);
  return out;
}

std::vector<const measure::Unit*> usual_units(const measure::Amount& amount, const food::Food* food) {
  std::vector<std::string_view> ids;
  const auto add = [&ids](std::initializer_list<std::string_view> more) { ids.insert(ids.end(), more); };
  const bool by_mass = amount.kind == Kind::mass || grams_per_base(amount.kind, food).has_value();
  const bool by_volume =
      amount.kind == Kind::volume || (by_mass && grams_per_base(Kind::volume, food).has_value());
  if (by_mass && crosses_by_mass(amount.kind)) add({"g", "oz"});
  if (by_volume && crosses_by_mass(amount.kind)) add({"ml", "cup-us", "floz-imperial"});
  if (amount.kind == Kind::length) add({"cm", "in"});
  if (amount.kind == Kind::temperature) add({"degc", "degf"});
  if (amount.kind == Kind::time) add({"min", "h"});
  std::vector<const measure::Unit*> units;
  for (const std::string_view id : ids) {
    const measure::Unit* unit = measure::unit_by_id(id);
    const bool written = amount.low.size() == 1 && amount.low.front().unit == unit;
    if (unit != nullptr && !written) units.push_back(unit);
  }
  return units;
}

}  // namespace tamis::cli
