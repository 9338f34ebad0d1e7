#include <algorithm>
#include <cmath>

#include "core/base/says.h"
#include "core/flow/step_says.h"
#include "core/rules/egg_limit.h"
#include "core/rules/gate_steps.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

constexpr double raw_below = 68;   // °C: egg that has been hotter has set, or is in a custard
constexpr double hot_from = 45;    // °C
constexpr double by_whisking = 5;  // K that bowl and air take while it streams in (common practice)
constexpr double starchy = 0.03;   // of the mix: potato, rice, flour hold egg smooth

struct Meeting {
  std::vector<int> uses;
  int egg = -1, hot = -1;  ///< uses: the most of each
  unsigned kinds = 0;      ///< of the egg's side
};

/// Raw egg and something hot that the step takes by mark or goes on with.
std::optional<Meeting> meeting_in(const Check& check, int step) {
  Meeting made;
  const FoodKinds& kinds = food_kinds(check);
  for (const int u : check.flow.steps[at(step)].takes) {
    const flow::Use& use = check.flow.uses[at(u)];
    if (use.instead || !check.flow.things[at(use.thing)].counts) continue;
    if (!is_told(use)) return std::nullopt;
    const flow::State& state = check.states().uses[at(u)];
    made.uses.push_back(u);
    const unsigned in = kinds.things[at(use.thing)];
    if ((in & kind::unknown) != 0) return std::nullopt;
    if ((in & kind::egg) != 0) {
      if (state.celsius.high > raw_below || state.heat.celsius > raw_below) return std::nullopt;
      made.egg = made.egg < 0 ? u : made.egg;
      made.kinds |= in;
    } else if (state.celsius.low >= hot_from &&
               (made.hot < 0 || state.celsius.low > check.states().uses[at(made.hot)].celsius.low)) {
      made.hot = u;
    }
  }
  return made.egg >= 0 && made.hot >= 0 ? std::optional(made) : std::nullopt;
}

/// Egg into broth: it is meant to set, in threads or as a raft.
bool is_broth(const flow::State& state, unsigned kinds) {
  return (kinds & kind::other) != 0 && state.share(flow::Constituent::sugars).high < 0.08 &&
         state.share(flow::Constituent::fat).high < 0.3;
}

/// Syrup onto egg that is whipped: it is meant to cook it.
bool is_syrup(const flow::State& state) { return state.share(flow::Constituent::sugars).low >= 0.5; }

bool streams(const Check& check, int step, const Meeting& meeting, const std::string& words) {
  if (does(check, step, {"whisk", "whip", "beat", "temper", "blend"})) return true;
  if (base::says(words, {"whisk", "beat", "stir", "fouett", "remu", "rühr", "schlag", "bat", "remov"})) return true;
  return std::any_of(meeting.uses.begin(), meeting.uses.end(),
                     [&](int u) { return flow::goes_in_gradually(check.fiche, check.flow, u); });
}

/// To which temperature the hot one must come for the mix to stay below the limit, to five degrees down; in proportion.
double cool_to(double hot, double egg, double mix, double limit) {
  const double part = (mix - egg) / (hot - egg);
  return std::floor((egg + (limit - 1 - egg) / part) / 5) * 5;
}

void look_at(Check& check, int step) {
  const unsigned kinds = food_kinds(check).steps[at(step)];
  if ((kinds & kind::egg) == 0 || (kinds & kind::thickener) != 0) return;
  const auto meeting = meeting_in(check, step);
  if (!meeting) return;
  const flow::State& hot = check.states().uses[at(meeting->hot)];
  const unsigned hot_kinds = food_kinds(check).things[at(check.flow.uses[at(meeting->hot)].thing)];
  if (is_syrup(hot) || is_broth(hot, hot_kinds) || does(check, step, {"poach", "bake", "fry"})) return;
  if (check.states().steps[at(step)].share(flow::Constituent::other_carbohydrate).high >= starchy) return;
  const auto mix = comes_to(check, meeting->uses);
  if (!mix) return;
  EggLimit limit = egg_limit_of(check, step, meeting->kinds);
  if (streams(check, step, *meeting, words_of(check, step))) limit.celsius += by_whisking;
  if (mix->low < limit.celsius) return;
  const flow::Use& use = check.flow.uses[at(meeting->hot)];
  const double egg = std::max(check.states().uses[at(meeting->egg)].celsius.low, 0.0);
  check.say(heat_span_of(check, use),
            "with the " + name_of(check, use) + " at " + degrees(hot.celsius.low) + " the mix comes to " + degrees(mix->low) +
                "; " + std::string(limit.said) + " at " + degrees(limit.sets),
            "let it cool to " + degrees(cool_to(hot.celsius.low, egg, mix->low, limit.celsius)) +
                " first, or take less of it at a time, whisking");
}

void run(Check& check) {
  if ((food_kinds(check).all & kind::egg) == 0) return;
  for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step) look_at(check, step);
}

}  // namespace

/// Hot onto raw egg, so that the mix is where egg sets.
const Rule egg_met_too_hot = {
    .id = "egg-met-too-hot",
    .severity = base::Severity::warning,
    .topic = "temperature",
    .summary = "something hot meets raw egg, and the mix comes to where egg sets",
    .explanation = R"(Not the heat of what is poured decides, but what both come to together: boiled milk streamed
onto yolks and sugar ends where custard cooks, 200 g of melted butter at 90 °C on 300 g of egg barely gets it to 40
°C. Where the mix comes to where the egg sets, there will be threads in it.

The mix is worked out from masses, composition and temperatures (an enthalpy balance, the vessel left out), at its
lowest. Egg sets by kind: white from 63 °C, yolk at 70, whole egg at 73, less 3 K; much sugar lifts that by about 8 K,
whisking or streaming by 5 K, and in one and a half times its weight of milk, cream or juice it is a custard, with 85
°C. Silent with starch or flour in it, for syrup onto whipping egg, for egg in broth, and where a mass or a
temperature is not known.)",
    .bad = R"(    <ingredient id="cream" food="cream-35" at="95 °C">200 g</ingredient>
    <ingredient id="eggs" food="egg-whole" at="20 °C">200 g</ingredient>
    <ingredient id="butter" food="butter-clarified" at="95 °C">600 g</ingredient>
    <step do="pour">Pour the <use of="cream">cream</use> and <use of="butter">butter</use> onto the <use of="eggs">eggs</use>.</step>)",
    .good = R"(    <ingredient id="cream" food="cream-35" at="60 °C">200 g</ingredient>
    <ingredient id="eggs" food="egg-whole" at="20 °C">200 g</ingredient>
    <ingredient id="butter" food="butter-clarified" at="60 °C">600 g</ingredient>
    <step do="pour">Pour the <use of="cream">cream</use> and <use of="butter">butter</use> onto the <use of="eggs">eggs</use>.</step>)",
    .source = "H. McGee, On Food and Cooking: where white, yolk and whole egg set; common practice: custards to 85 °C",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
