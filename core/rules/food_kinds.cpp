#include "core/rules/food_kinds.h"

#include <algorithm>
#include <array>
#include <utility>

#include "core/base/says.h"
#include "core/base/utf8.h"
#include "core/rules/contents.h"
#include "core/rules/step_words.h"

namespace tamis::rules {
namespace {

using food::Role;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

constexpr std::array<std::pair<std::string_view, unsigned>, 60> by_id{{
    {"egg-yolk", kind::yolk},
    {"egg-yolk-frozen", kind::yolk},
    {"egg-yolk-sugared", kind::yolk | kind::sugar},
    {"egg-whole", kind::whole_egg},
    {"egg-whole-frozen", kind::whole_egg},
    {"egg-white", kind::white},
    {"egg-white-frozen", kind::white},
    {"milk-whole", kind::milk},
    {"milk-semi-skimmed", kind::milk},
    {"milk-lowfat-1", kind::milk},
    {"milk-skimmed", kind::milk},
    {"milk-goat", kind::milk},
    {"milk-uht", kind::milk},
    {"milk-evaporated", kind::milk},
    {"buttermilk", kind::sour_dairy},
    {"milk-condensed-sweetened", kind::milk | kind::sugar},
    {"cream-half-and-half", kind::cream},
    {"cream-single", kind::cream},
    {"cream-30", kind::cream},
    {"cream-35", kind::cream},
    {"cream-36", kind::cream},
    {"cream-double", kind::cream},
    {"butter-unsalted", kind::butter},
    {"butter-salted", kind::butter},
    {"butter-clarified", kind::butter},
    {"butter-dry-84", kind::butter},
    {"chocolate-dark-55", kind::dark},
    {"chocolate-dark-60", kind::dark},
    {"chocolate-dark-64", kind::dark},
    {"chocolate-dark-70", kind::dark},
    {"chocolate-dark-80", kind::dark},
    {"chocolate-milk", kind::milk_chocolate},
    {"chocolate-milk-40", kind::milk_chocolate},
    {"chocolate-white", kind::white_chocolate},
    {"chocolate-gianduja", kind::other_chocolate},
    {"chocolate-chips", kind::other_chocolate},
    {"cocoa-mass", kind::other_chocolate},
    {"butter-cocoa", kind::other_chocolate},
    {"cocoa-powder", kind::cocoa},
    {"cocoa-powder-alkalised", kind::cocoa},
    {"cocoa-nibs", kind::cocoa},
    {"lemon-juice", kind::acid},
    {"lime-juice", kind::acid},
    {"passion-fruit", kind::acid},
    {"passion-fruit-puree", kind::acid},
    {"yuzu-juice", kind::acid},
    {"juice-grapefruit", kind::acid},
    {"orange-juice", kind::acid},
    {"gelatine-leaf", kind::gelatine},
    {"gelatine-powder", kind::gelatine},
    {"gelatine-fish", kind::gelatine},
    {"gelatine-mass", kind::gelatine_mass},
    {"pineapple", kind::enzyme_fruit},
    {"kiwi", kind::enzyme_fruit},
    {"papaya", kind::enzyme_fruit},
    {"fig", kind::enzyme_fruit},
    {"milk-powder-skimmed", kind::milk},
    {"milk-powder-whole", kind::milk},
    {"milk-powder-instant", kind::milk},
    {"water", kind::plain},
}};

unsigned by_role(Role role) {
  switch (role) {
    case Role::flour: return kind::flour;
    case Role::starch: return kind::starch;
    case Role::sugar: return kind::sugar;
    case Role::fat: return kind::other;
    case Role::dairy: return kind::sour_dairy;
    case Role::setting: return kind::other_setting;
    case Role::acid:
    case Role::salt:
    case Role::spice:
    case Role::flavouring:
    case Role::alcohol:
    case Role::leavening: return kind::plain;
    default: return kind::other;
  }
}

/// "gélatine", and nothing says whether leaf or powder.
bool names_gelatine(std::string_view name) { return base::says(base::lower(name), {"gelatin", "gélatine"}); }

FoodKinds read_kinds(const Check& check) {
  FoodKinds out;
  const flow::Flow& flow = check.flow;
  out.things.assign(flow.things.size(), 0);
  out.steps.assign(flow.steps.size(), 0);
  for (std::size_t i = 0; i < flow.things.size(); ++i) {
    const flow::Thing& thing = flow.things[i];
    if (thing.kind == flow::Thing::Kind::ingredient && thing.ingredient >= 0) {
      const unsigned one = kind_of(check, check.fiche.ingredients[at(thing.ingredient)]);
      out.things[i] = thing.counts ? one : 0;
      out.all |= out.things[i];
    } else if (thing.kind == flow::Thing::Kind::part) {
      out.things[i] = kind::unknown;
    } else if (thing.kind == flow::Thing::Kind::component && thing.maker < 0) {
      out.things[i] = kind::unknown;
    }
  }
  for (const int s : flow.order) {
    unsigned& here = out.steps[at(s)];
    for (const int u : flow.steps[at(s)].takes) {
      const flow::Use& use = flow.uses[at(u)];
      if (!use.instead) here |= out.things[at(use.thing)];
    }
    for (const int given : flow.steps[at(s)].gives) out.things[at(given)] = here;
    for (std::size_t i = 0; i < flow.things.size(); ++i) {
      if (flow.things[i].kind == flow::Thing::Kind::component && flow.things[i].maker == s) out.things[i] = here;
    }
  }
  return out;
}

}  // namespace

unsigned kind_of(const Check& check, const fiche::Ingredient& ingredient) {
  if (ingredient.food == nullptr) return names_gelatine(ingredient.name) ? kind::gelatine | kind::unknown : kind::unknown;
  const std::string_view id = general_id(check, ingredient.food);
  for (const auto& [name, kinds] : by_id)
    if (name == id) return kinds;
  return by_role(ingredient.food->role);
}

const FoodKinds& food_kinds(const Check& check) {
  return check.once<FoodKinds>([&] { return read_kinds(check); });
}

std::optional<flow::Range> share_of_kinds(const Check& check, int step, unsigned kinds) {
  const FoodKinds& known = food_kinds(check);
  flow::Range sum;
  for (std::size_t i = 0; i < check.flow.things.size(); ++i) {
    const flow::Thing& thing = check.flow.things[i];
    if (thing.kind != flow::Thing::Kind::ingredient || (known.things[i] & kinds) == 0) continue;
    const auto share = check.states().held(step, static_cast<int>(i));
    if (!share) return std::nullopt;
    sum.low += share->low;
    sum.high += share->high;
  }
  return sum;
}

base::Span span_of(const Check& check, const flow::Use& use) {
  return check.document.span(use.mark != fiche::none ? use.mark : check.flow.steps[at(use.step)].node);
}

bool is_called(const Check& check, int step, std::initializer_list<std::string_view> names) {
  const auto holds = [&](std::string_view text) {
    return std::any_of(names.begin(), names.end(),
                       [&](std::string_view name) { return text.find(name) != std::string_view::npos; });
  };
  const fiche::Node component = check.flow.steps[at(step)].component;
  if (component != fiche::none && holds(base::lower(check.document.get(component, fiche::At::title)))) return true;
  return holds(base::lower(check.fiche.title)) || holds(lower_words(check, check.fiche.steps[at(step)].node));
}

}  // namespace tamis::rules
