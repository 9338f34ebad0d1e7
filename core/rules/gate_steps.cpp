#include "core/rules/gate_steps.h"

#include <algorithm>
#include <cmath>

#include "core/base/says.h"
#include "core/base/utf8.h"
#include "core/fiche/prose.h"
#include "core/flow/do_actions.h"
#include "core/flow/point.h"
#include "core/flow/step_says.h"
#include "core/rules/figure_text.h"
#include "core/rules/step_words.h"

namespace tamis::rules {
namespace {

using flow::Action;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

std::vector<const Action*> actions_of(const Check& check, int step) {
  return flow::doing_of(check.fiche, check.fiche.steps[at(step)]).actions;
}

bool in_oven(const Check& check, int step) {
  return check.document.get(check.flow.steps[at(step)].node, fiche::At::on).find("oven") != std::string_view::npos;
}

}  // namespace

bool heats(const Check& check, int step) {
  const auto actions = actions_of(check, step);
  return std::any_of(actions.begin(), actions.end(), [](const Action* action) { return action->heats(); });
}

bool heats_in_the_pan(const Check& check, int step) {
  if (in_oven(check, step)) return false;
  bool some = false;
  for (const Action* action : actions_of(check, step)) {
    if (action->heat == Action::Heat::bakes || action->heat == Action::Heat::fries || action->heat == Action::Heat::sugar)
      return false;
    some = some || action->heats() || action->word == "temper";
  }
  const std::string_view on = check.document.get(check.flow.steps[at(step)].node, fiche::At::on);
  if (some || on.find("hob") != std::string_view::npos) return true;
  return base::says(words_of(check, step), {"water bath", "bain", "double boiler", "over the heat", "low heat", "wasserbad",
                                            "baño", "sur le feu", "feu doux"});
}

bool boils(const Check& check, int step) {
  const auto actions = actions_of(check, step);
  return std::any_of(actions.begin(), actions.end(), [](const Action* action) {
    return action->heat == Action::Heat::boils || action->heat == Action::Heat::simmers;
  });
}

bool heated_next(const Check& check, int step) {
  return std::any_of(check.flow.uses.begin(), check.flow.uses.end(), [&](const flow::Use& use) {
    return use.step != step && check.flow.things[at(use.thing)].maker == step && heats(check, use.step);
  });
}

std::string name_of(const Check& check, const flow::Use& use) {
  std::string said = use.mark == fiche::none ? std::string() : check.document.all_text(use.mark);
  return said.empty() ? std::string(check.flow.things[at(use.thing)].name) : fiche::folded(said);
}

std::optional<flow::Range> comes_to(const Check& check, const std::vector<int>& uses) {
  std::vector<flow::Point> points;
  points.reserve(uses.size());
  for (const int use : uses) points.push_back(flow::point_of(check.states().uses[at(use)]));
  std::vector<flow::Going> goings;
  for (std::size_t i = 0; i < uses.size(); ++i) {
    const auto& grams = check.states().uses[at(uses[i])].grams;
    if (!grams || std::isinf(grams->high)) return std::nullopt;
    points[i].solid = points[i].celsius.high < 40;
    goings.push_back({&points[i], grams->middle(), check.flow.uses[at(uses[i])].thing});
  }
  return flow::mix_celsius(goings).celsius;
}

const std::string& words_of(const Check& check, int step) { return lower_words(check, check.fiche.steps[at(step)].node); }

std::string said(const StatedHeat& heat) {
  const auto& amount = *heat.statement->amount;
  const auto& figure = amount.low.empty() ? amount.high : amount.low;
  if (figure.empty() || figure.front().unit->id == "degc" || !heat.low || !heat.high) return heat.statement->text;
  const std::string low = degrees(*heat.low), high = degrees(*heat.high);
  const std::string both = low == high ? low : low.substr(0, low.find(' ')) + "–" + high;
  return heat.statement->text + " (" + both + ")";
}

bool is_of_a_use(const Check& check, int step, const StatedHeat& heat) {
  const flow::Step& here = check.flow.steps[at(step)];
  return here.takes.size() > 1 && !heats(check, step) && flow::use_before(check.document, here, check.flow, heat.statement->node) >= 0;
}

std::string degrees(double celsius) { return figure_text(std::round(celsius), measure::Kind::temperature); }

base::Span heat_span_of(const Check& check, const flow::Use& use) {
  const fiche::Statement* said = use.mark == fiche::none ? nullptr : check.fiche.statement(use.mark, fiche::At::at);
  return said != nullptr ? said->where : span_of(check, use);
}

}  // namespace tamis::rules
