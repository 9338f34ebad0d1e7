#include "core/record/resistances.h"

#include <algorithm>
#include <set>

#include "core/rules/cook_limit.h"

namespace tamis::record {
namespace {

using food::Role;

bool starts(std::string_view id, std::initializer_list<std::string_view> with) {
  return std::any_of(with.begin(), with.end(), [id](std::string_view start) { return id.starts_with(start); });
}

struct Foods {
  bool lean_chicken = false, poultry = false, red = false, minced = false, other_meat = false;
  bool yolk = false, whole_egg = false, white = false, sugar = false, milk = false;
};

Foods sorted(const std::vector<FoodKind>& kinds) {
  Foods out;
  for (const auto& [id, role] : kinds) {
    if (role == Role::meat) {
      out.minced = out.minced || id.find("minced") != std::string_view::npos || id.find("ground") != std::string_view::npos;
      if (id == "chicken-breast") {
        out.lean_chicken = true;
      } else if (rules::is_poultry(id)) {
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

}  // namespace

std::vector<const physics::HeatResistance*> resistances_in(const std::vector<FoodKind>& foods, bool cooked) {
  std::vector<const physics::HeatResistance*> out;
  for (const std::string_view id : organisms_of(sorted(foods), cooked)) out.push_back(physics::heat_resistance_named(id));
  return out;
}

}  // namespace tamis::record
