#include "core/rules/cream_to_whip.h"

#include <algorithm>

#include "core/base/says.h"
#include "core/base/utf8.h"
#include "core/rules/foam.h"
#include "core/rules/gate_steps.h"

namespace tamis::rules {
namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

constexpr unsigned goes_with_it = kind::cream | kind::milk | kind::sugar | kind::plain;

bool by_siphon(const Check& check, int step) {
  const auto says_so = [](std::string_view text) {
    return base::says(text, {"siphon", "sifon", "sifón", "espuma", "gas bottle"});
  };
  const fiche::Node node = check.flow.steps[at(step)].node;
  return says_so(check.document.get(node, fiche::At::on)) || is_called(check, step, {"siphon", "sifon", "sifón", "espuma"}) ||
         says_so(words_of(check, step)) || does(check, step, {"foam"});
}

/// Whipped to stand; whisking alone may only mix.
bool is_to_stand(const Check& check, int step) {
  if (does(check, step, {"whip"})) return true;
  if (!does(check, step, {"whisk", "beat"})) return false;
  return base::says(words_of(check, step), {"whip", "peak", "stiff", "stand", "chantilly", "monter", "monte", "ferme", "bec",
                                            "pic", "steif", "schlag", "spitz", "montar", "picos", "firme"});
}

double fat_of(const flow::State& state) { return state.share(flow::Constituent::fat).high * 100; }

/// By a figure of its own: then it is no cream to whip cold.
bool is_warmed(const Check& check, int step) {
  const auto& heats = stated_heats(check, check.flow.steps[at(step)].node);
  return std::any_of(heats.begin(), heats.end(), [&](const StatedHeat& heat) {
    return heat.el == fiche::El::food_temp && heat.low && *heat.low > 30 && !is_of_a_use(check, step, heat);
  });
}

void add_whipped_in_a_step(const Check& check, int step, std::vector<WhippedCream>& out) {
  const FoodKinds& kinds = food_kinds(check);
  if ((kinds.steps[at(step)] & ~goes_with_it) != 0 || (kinds.steps[at(step)] & kind::cream) == 0) return;
  if (!is_to_stand(check, step) || by_siphon(check, step) || heats(check, step)) return;
  if (does(check, step, {"chill", "cool", "rest"}) || is_warmed(check, step)) return;
  WhippedCream made;
  made.step = step;
  double grams = 0, fat = 0, most = 0;
  for (const int u : check.flow.steps[at(step)].takes) {
    const flow::Use& use = check.flow.uses[at(u)];
    const flow::State& state = check.states().uses[at(u)];
    if (use.instead || (kinds.things[at(use.thing)] & (kind::cream | kind::milk)) == 0) continue;
    if (!is_told(use) || !state.grams || state.air == flow::Action::Air::in) return;
    grams += state.grams->middle();
    fat += state.grams->middle() * fat_of(state);
    if ((kinds.things[at(use.thing)] & kind::cream) == 0 || state.grams->middle() <= most) continue;
    most = state.grams->middle();
    made.thing = use.thing;
    made.where = heat_span_of(check, use);
    made.celsius = state.celsius;
  }
  if (made.thing < 0 || grams <= 0) return;
  made.fat_percent = fat / grams;
  out.push_back(made);
}

bool comes_whipped(const Check& check, const flow::Thing& thing) {
  const std::string words =
      base::lower(std::string(check.document.get(thing.node, fiche::At::prep)) + " " + std::string(thing.name));
  return says_whipped(words) && !base::says(words, {"siphon", "froth", "whip only", "skim"});
}

void add_that_comes_whipped(const Check& check, int thing, std::vector<WhippedCream>& out) {
  const flow::Thing& cream = check.flow.things[at(thing)];
  if (cream.kind != flow::Thing::Kind::ingredient || food_kinds(check).things[at(thing)] != kind::cream ||
      !comes_whipped(check, cream))
    return;
  const flow::State& state = check.states().things[at(thing)];
  const fiche::Statement* said = check.fiche.statement(cream.node, fiche::At::at);
  out.push_back({-1, thing, said != nullptr ? said->where : check.document.span(cream.node), state.celsius, fat_of(state)});
}

}  // namespace

const std::vector<WhippedCream>& whipped_creams(const Check& check) {
  struct Found {
    std::vector<WhippedCream> all;
  };
  return check
      .once<Found>([&] {
        Found found;
        if ((food_kinds(check).all & kind::cream) == 0) return found;
        for (int thing = 0; thing < static_cast<int>(check.flow.things.size()); ++thing)
          add_that_comes_whipped(check, thing, found.all);
        for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step)
          add_whipped_in_a_step(check, step, found.all);
        return found;
      })
      .all;
}

}  // namespace tamis::rules
