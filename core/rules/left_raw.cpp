#include "core/rules/left_raw.h"

#include <algorithm>
#include <limits>
#include <vector>

#include "core/base/utf8.h"
#include "core/flow/do_actions.h"
#include "core/rules/gate_steps.h"
#include "core/rules/stated_heat.h"

namespace tamis::rules {
namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

constexpr double endless = std::numeric_limits<double>::infinity();

/// The steps that a thing goes through, each once; components and parts followed.
std::vector<int> steps_of(const Check& check, int thing) {
  const flow::Flow& flow = check.flow;
  std::vector<char> seen(flow.steps.size(), 0);
  std::vector<int> out;
  const auto follow = [&](const flow::Thing& here) {
    for (const int use : here.uses) {
      const int step = flow.uses[at(use)].step;
      if (seen[at(step)]++ == 0) out.push_back(step);
    }
  };
  follow(flow.things[at(thing)]);
  for (const flow::Thing& part : flow.things) {
    if (part.kind == flow::Thing::Kind::part && part.was == thing) follow(part);
  }
  for (std::size_t i = 0; i < out.size(); ++i) {
    for (const flow::Thing& made : flow.things) {
      if (made.maker == out[i] && made.kind != flow::Thing::Kind::part) follow(made);
    }
  }
  return out;
}

double hottest_in(const Check& check, int step) {
  const fiche::Step& here = check.fiche.steps[at(step)];
  const flow::Doing doing = flow::doing_of(check.fiche, here);
  const bool heated = std::any_of(doing.actions.begin(), doing.actions.end(),
                                  [](const flow::Action* one) { return one->heats(); });
  double stated = -endless;
  for (const StatedHeat& heat : stated_heats(check, here.node))
    stated = std::max(stated, heat.high.value_or(heat.low.value_or(endless)));
  const flow::State& state = check.states().steps[at(step)];
  if (doing.nothing || !doing.unknown.empty())
    return stated > -endless ? std::max(stated, state.celsius.high) : endless;
  if (heated) return stated > -endless ? std::max(stated, state.heat.celsius) : endless;
  return std::max({stated, state.celsius.high, state.heat.celsius});
}

}  // namespace

double hottest_of(const Check& check, int thing) {
  double out = -endless;
  for (const int step : steps_of(check, thing)) out = std::max(out, hottest_in(check, step));
  return out == -endless ? endless : out;
}

bool is_held_at(const Check& check, int thing, double celsius, double seconds) {
  for (const int step : steps_of(check, thing)) {
    for (const StatedHeat& heat : stated_heats(check, check.flow.steps[at(step)].node)) {
      if (heat.el != fiche::El::food_temp || heat.low.value_or(heat.high.value_or(0)) < celsius - 0.5) continue;
      const fiche::Statement* held = check.fiche.statement(heat.statement->node, fiche::At::for_);
      const auto time = held == nullptr ? std::nullopt : flow::time_meant(*held, check.kitchen);
      if (time && static_cast<double>(time->least) >= seconds) return true;
      if (static_cast<double>(check.times().lengths[at(step)].whole.least) >= seconds &&
          !heats_in_the_pan(check, step))
        return true;
    }
  }
  return false;
}

bool is_frozen_in(const Check& check, int thing) {
  const std::vector<int> steps = steps_of(check, thing);
  return std::any_of(steps.begin(), steps.end(), [&](int step) {
    return does(check, step, {"freeze"}) || check.states().steps[at(step)].celsius.high <= -15;
  });
}

std::string words_of_line(const Check& check, int thing) {
  const fiche::Ingredient& line = check.fiche.ingredients[at(check.flow.things[at(thing)].ingredient)];
  std::string out(line.name);
  if (line.food != nullptr) out += " " + std::string(line.food->english) + " " + std::string(line.food->id);
  return base::lower(out + " " + std::string(check.document.get(line.node, fiche::At::prep)));
}

}  // namespace tamis::rules
