#include "core/record/kills.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>
#include <string_view>

namespace tamis::record {
namespace {

using food::Role;

constexpr double heat = 50;        // °C: a limit above it kills
constexpr double worth_it = 0.05;  // log10: less is not told

/// The table's food that an ingredient is, or is like.
std::string_view general_id(const fiche::Fiche& fiche, const fiche::Ingredient& ingredient) {
  const fiche::Kitchen::OwnFood* own = fiche.kitchen->own_food(ingredient.food_id);
  return own != nullptr ? std::string_view(own->like) : ingredient.food_id;
}

bool starts(std::string_view id, std::initializer_list<std::string_view> with) {
  return std::any_of(with.begin(), with.end(), [id](std::string_view start) { return id.starts_with(start); });
}

bool is_poultry(std::string_view id) {
  return starts(id, {"chicken", "turkey", "duck", "goose", "quail", "guinea", "pheasant", "pigeon", "partridge", "capon"});
}

struct Foods {
  bool lean_chicken = false, poultry = false, red = false, minced = false, other_meat = false;
  bool yolk = false, whole_egg = false, white = false, sugar = false, milk = false;
};

Foods foods_of(const fiche::Fiche& fiche, fiche::Node component) {
  Foods out;
  for (const fiche::Ingredient& one : fiche.ingredients) {
    if (one.component != component || one.food == nullptr) continue;
    const std::string_view id = general_id(fiche, one);
    const Role role = one.food->role;
    if (role == Role::meat) {
      out.minced = out.minced || id.find("minced") != std::string_view::npos || id.find("ground") != std::string_view::npos;
      if (id == "chicken-breast") {
        out.lean_chicken = true;
      } else if (is_poultry(id)) {
        out.poultry = true;
      } else {
        (starts(id, {"beef", "veal", "lamb", "mutton", "ox"}) ? out.red : out.other_meat) = true;
      }
    }
    out.yolk = out.yolk || id.starts_with("egg-yolk");
    out.white = out.white || id.starts_with("egg-white");
    out.whole_egg = out.whole_egg || (role == Role::egg && !starts(id, {"egg-yolk", "egg-white"}));
    out.sugar = out.sugar || role == Role::sugar;
    out.milk = out.milk || starts(id, {"milk", "cream"});
  }
  return out;
}

std::set<std::string_view> organisms_of(const Foods& foods, bool asks_heat) {
  std::set<std::string_view> out;
  if (foods.poultry) {
    out.insert("salmonella-poultry");
  } else if (foods.lean_chicken) {
    out.insert("salmonella-chicken");
  }
  if (foods.red) out.insert("salmonella-beef");
  if (foods.other_meat) out.insert("salmonella-meat");
  if (foods.minced) out.insert("e-coli-meat");
  if (foods.yolk) {
    out.insert(foods.sugar ? "salmonella-sweet-yolk" : "salmonella-yolk");
  } else if (foods.whole_egg) {
    out.insert(foods.sugar ? "salmonella-sweet-egg" : "salmonella-whole-egg");
  } else if (foods.white) {
    out.insert("salmonella-egg-white");
  }
  if (foods.milk) out.insert("coxiella-milk");
  if (asks_heat) out.insert("listeria-cooked");
  return out;
}

std::vector<physics::CorePoint> curve_of(const Log& log) {
  std::vector<physics::CorePoint> out;
  for (const Reading& one : log.readings) {
    if (one.parted) out.push_back({one.seconds, std::numeric_limits<double>::quiet_NaN()});
    out.push_back({one.seconds, one.celsius});
  }
  return out;
}

bool was_heated(const Log& log) {
  const auto hottest = std::max_element(log.readings.begin(), log.readings.end(),
                                        [](const Reading& a, const Reading& b) { return a.celsius < b.celsius; });
  return hottest->celsius > log.readings.front().celsius + 1;
}

}  // namespace

std::vector<Kill> kills_of(const fiche::Fiche& fiche, const ControlPoint& point, const Log& log) {
  std::vector<Kill> out;
  if (!log.usable || point.asks.way == ControlLimit::Way::stay) return out;
  const bool asks_heat = std::any_of(point.asks.stages.begin(), point.asks.stages.end(),
                                     [](const Stage& one) { return one.least && *one.least >= heat; });
  if (!asks_heat && !was_heated(log)) return out;
  const std::vector<physics::CorePoint> curve = curve_of(log);
  for (const std::string_view id : organisms_of(foods_of(fiche, point.component), asks_heat)) {
    Kill kill;
    kill.of = physics::heat_resistance_named(id);
    kill.logs = physics::log_reductions(*kill.of, curve);
    kill.reached = std::isnan(kill.of->asked) ? std::numeric_limits<double>::quiet_NaN()
                                              : physics::when_reached(*kill.of, curve, kill.of->asked);
    if (kill.logs >= worth_it || asks_heat) out.push_back(kill);
  }
  return out;
}

}  // namespace tamis::record
