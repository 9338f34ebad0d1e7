#include "core/rules/needs_cold.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "core/physics/sugar.h"
#include "core/rules/contents.h"
#include "core/rules/figure_value.h"
#include "core/rules/heated.h"
#include "core/rules/keeps_as_measured.h"
#include "core/rules/safety_limits.h"
#include "core/rules/sentence.h"

namespace tamis::rules {
namespace {

using flow::Constituent;
using food::Role;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

// Shares of the whole from which one thing decides (common practice).
constexpr double crumb = 0.2;        // flour in what is baked through: bread, cake, pastry
constexpr double dough = 0.35;       // flour in what is not: raw dough
constexpr double much_acid = 0.03;   // lemon juice, vinegar
constexpr double much_fruit = 0.35;  // fruit, wine, tomato, sour dairy
constexpr double wet = 0.55;         // water in what goes in, so that only boiling it nearly dry would do
constexpr double thin = 0.2;         // sugar and salt to that water: activity 0.98
constexpr double mostly_fat = 0.6;
constexpr double much_salt = 0.05;
constexpr double garlic_and_oil = 0.9;  // with salt and herbs for the rest
constexpr double much_chocolate = 0.3;  // its cocoa takes up water that is not counted as bound here

/// What went in, in g, by what it does to keeping.
struct Sums {
  double whole = 0, water = 0, sugars = 0, salt = 0, flour = 0, dry = 0, moist = 0, acid = 0, sour = 0, plant = 0;
  double chocolate = 0, culture = 0, garlic = 0, oil = 0;
  bool unknown = false;  ///< a food or an amount that nobody knows
  bool cured = false;
};

bool is_one_of(std::string_view id, std::initializer_list<std::string_view> starts) {
  return std::any_of(starts.begin(), starts.end(), [id](std::string_view start) { return id.starts_with(start); });
}

bool is_sour(const food::Food& food, std::string_view id) {
  return food.role == Role::fruit || food.role == Role::alcohol ||
         is_one_of(id, {"tomato", "yogurt", "buttermilk", "cream-sour", "cream-creme-fraiche", "sauerkraut",
                        "mayonnaise", "relish", "salad-dressing", "wine", "juice", "orange-juice", "apple-juice",
                        "mustard", "ketchup", "pickle"});
}

bool is_acid(const food::Food& food, std::string_view id) {
  return food.role == Role::acid ||
         is_one_of(id, {"vinegar", "lemon-juice", "lime-juice", "yuzu", "passion-fruit"});
}

/// Cured, dried or hard: it keeps by itself.
bool is_cured(std::string_view id) {
  return is_one_of(id, {"ham-cured",
                        "salami",
                        "chorizo",
                        "bacon",
                        "pork-salt",
                        "pork-backfat",
                        "anchovy",
                        "cod-salt",
                        "caviar",
                        "salmon-smoked",
                        "cheese-parmesan",
                        "cheese-pecorino",
                        "cheese-gruyere",
                        "cheese-emmental",
                        "cheese-cheddar",
                        "cheese-gouda",
                        "milk-condensed-sweetened",
                        "milk-powder",
                        "egg-whole-powder",
                        "egg-white-powder",
                        "egg-yolk-powder",
                        "cheese-roquefort",
                        "cheese-blue",
                        "cheese-feta"});
}

/// A share of 100 g; nothing where it is not reported.
double figure(double of_hundred) { return std::isnan(of_hundred) ? 0 : of_hundred / 100; }

/// Another file makes it, of foods that are known and do not keep it.
bool is_known(const Check& check, const Part& part) {
  if (part.grams->high == 0) return true;
  const flow::State& state = check.states().things[at(part.thing)];
  if (state.allergens_open || state.roles == 0) return false;
  return !state.has(Role::acid) && !state.has(Role::fruit) && !state.has(Role::sugar) && !state.has(Role::alcohol);
}

Sums sums_of(const Check& check, int step) {
  Sums out;
  for (const Part& part : contents_of(check, step).parts) {
    if (!part.grams || (part.food == nullptr && !is_known(check, part))) {
      out.unknown = true;
      continue;
    }
    if (part.food == nullptr) continue;
    const std::string_view id = general_id(check, part.food);
    const double grams = part.grams->middle();
    const Role role = part.food->role;
    out.whole += grams;
    out.water += grams * figure(part.food->per_100_g.water);
    out.sugars += grams * figure(part.food->per_100_g.sugars);
    out.salt += grams * figure(part.food->per_100_g.sodium_mg) * 2.5 / 1000;
    if (role == Role::flour || role == Role::starch) out.flour += grams;
    if (role == Role::sugar || role == Role::nut || role == Role::chocolate) out.dry += grams;
    if (is_cured(id)) {
      out.cured = true;
    } else if (role == Role::meat || role == Role::fish || role == Role::dairy) {
      out.moist += grams;
    }
    if (role == Role::vegetable ||
        is_one_of(id, {"bean-", "chickpea", "lentil", "pea-", "rice-", "pasta", "tofu"}))
      out.plant += grams;
    if (id == "garlic") out.garlic += grams;
    if (id.starts_with("oil-")) out.oil += grams;
    if (role == Role::chocolate) out.chocolate += grams;
    if (is_one_of(id, {"yogurt", "buttermilk", "cream-sour", "cream-creme-fraiche"})) out.culture += grams;
    if (is_acid(*part.food, id)) out.acid += grams;
    if (is_sour(*part.food, id)) out.sour += grams;
  }
  return out;
}

/// Of the water in it with what is known to be dissolved: as dry as it may be, and as wet.
flow::Range activity_of(const flow::State& state) {
  const auto with = [](double water, double sugars, double salt) {
    physics::Dissolved dissolved;
    const double kg = std::max(water, 0.01);
    dissolved.sucrose = sugars / kg;
    dissolved.salt = salt / kg;
    return physics::water_activity(dissolved);
  };
  const flow::Range& water = state.share(Constituent::water);
  const flow::Range& sugars = state.share(Constituent::sugars);
  const flow::Range& salt = state.share(Constituent::salt);
  return {with(water.low, sugars.high, std::min(salt.high, much_salt)), with(water.high, sugars.low, salt.low)};
}

/// Whether what went in is so wet that it stays so, however much boils off without a word of it.
bool stays_wet(const Check& check, int step, const Sums& sums) {
  return sums.water >= wet * sums.whole && sums.sugars + sums.salt <= thin * sums.water &&
         !does(check, step,
               {"reduce", "dry", "caramelise", "caramelize", "bake", "roast", "fry", "deep-fry", "cure", "smoke"});
}

/// Whether the step, or one before it, heats what it makes.
bool is_baked(const Check& check, int step) {
  return may_heat(check, step) || heated_before(check, step, Role::flour) ||
         heated_before(check, step, Role::starch) || heated_before(check, step, Role::nut) ||
         heated_before(check, step, Role::sugar);
}

/// Milk or what else has soured on purpose: what it is cultured with, and time in the warm or a word for it.
bool is_soured(const Check& check, int step, const Sums& sums) {
  return done_before(check, step, {"ferment", "ripen", "mature", "culture", "incubate"}) ||
         (sums.culture > 0 && done_before(check, step, {"hold", "keep", "rest", "stand", "set"}));
}

/// Garlic under oil, which no air reaches, and not fried dry in it: it is named among what needs the cold (FDA Food Code
/// 1-201.10, from memory).
bool is_garlic_in_oil(const Check& check, int step, const Sums& sums) {
  return sums.garlic > 0 && !sums.unknown && sums.garlic + sums.oil >= garlic_and_oil * sums.whole &&
         sums.oil >= 0.5 * sums.whole && !done_before(check, step, {"fry", "deep-fry", "roast", "bake", "dry", "pickle"});
}

struct Answer {
  Need need;
  std::string_view open{};  ///< what may decide it
};

Answer asked(std::string_view open) { return {Need::unknown, open}; }

Answer work_out(const Check& check, int step) {
  const flow::State& state = check.states().steps[at(step)];
  const bool egg = state.has(Role::egg);
  const bool animal = egg || state.has(Role::meat) || state.has(Role::fish) || state.has(Role::dairy);
  if (keeps_as_measured(check, step)) return {Need::no};
  const Sums sums = sums_of(check, step);
  if (is_garlic_in_oil(check, step, sums)) return {Need::yes};
  const bool plant = sums.plant > 0 && sums.plant >= 0.1 * sums.whole;
  if (!animal && !plant) return sums.unknown || state.has(Role::other) ? asked("") : Answer{Need::no};
  const flow::Range activity = activity_of(state);
  const double dry = safety_limit(check.kitchen, "dry").celsius;
  if (activity.high < dry) return {Need::no};
  if (sums.whole > 0 && is_baked(check, step)) {
    const bool crumbed = sums.flour >= crumb * sums.whole || sums.flour + sums.dry >= 0.5 * sums.whole;
    if (crumbed && sums.moist + sums.plant <= 0.6 * (sums.flour + sums.dry)) return {Need::no};
    if (crumbed) return asked("how moist it is between its crumb");
  }
  const double wet_enough = safety_limit(check.kitchen, "asked_if_dry").celsius;
  if (sums.unknown) return asked("a food or an amount in it that is not known");
  if (activity.low < wet_enough && !stays_wet(check, step, sums)) return asked("");  // cake, buttercream: every house has its own days
  if (sums.flour >= dough * sums.whole) return asked("");
  if (sums.acid >= much_acid * sums.whole || sums.sour >= much_fruit * sums.whole) return asked("how acid it is");
  if (state.share(Constituent::fat).low >= mostly_fat && !egg && !state.has(Role::meat)) return asked("");
  if (sums.salt >= much_salt * sums.whole) return asked("its salt");
  if (!egg && sums.moist == 0 && sums.cured) return asked("what it was cured with");
  if (sums.chocolate >= much_chocolate * sums.whole && !egg && !state.has(Role::meat))
    return asked("");  // ganache likewise
  if (!egg && !state.has(Role::meat) && !state.has(Role::fish) && is_soured(check, step, sums))
    return asked("");
  if (!animal && !may_heat(check, step) && !heated_before(check, step, Role::vegetable) &&
      !heated_before(check, step, Role::other) && !heated_before(check, step, Role::flour)) {
    return asked("");  // raw, as it grew
  }
  return {Need::yes};
}

const Answer& answer_of(const Check& check, int step) {
  struct Answers {
    mutable std::map<int, Answer> known;
  };
  const Answers& answers = check.once<Answers>([] { return Answers{}; });
  const auto found = answers.known.find(step);
  if (found != answers.known.end()) return found->second;
  return answers.known.emplace(step, work_out(check, step)).first->second;
}

}  // namespace

Need needs_cold(const Check& check, int step) { return answer_of(check, step).need; }

std::string_view what_decides_cold(const Check& check, int step) { return answer_of(check, step).open; }

}  // namespace tamis::rules
