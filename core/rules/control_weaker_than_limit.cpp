#include "core/base/utf8.h"
#include "core/flow/stated_time.h"
#include "core/measure/bound.h"
#include "core/rules/cook_limit.h"
#include "core/rules/cooling_stages.h"
#include "core/rules/gate_steps.h"
#include "core/rules/keeps.h"
#include "core/rules/needs_cold.h"
#include "core/rules/registry.h"
#include "core/rules/say_limit.h"
#include "core/rules/sentence.h"
#include "core/rules/stated_heat.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;
using fiche::Node;
using Form = measure::Amount::Form;
using measure::Bound;

std::size_t at(int i) { return static_cast<std::size_t>(i); }

constexpr double hair = 0.5;  // °C: rounding of one scale to the other
constexpr double warm = 35;   // °C: a least figure above it is of holding hot, a most below it of holding cold

/// Which way the figure is a limit, by its own words or those before it.
Bound bound_of(const Check& check, const fiche::Statement& figure) {
  if (figure.amount->form == Form::at_least) return Bound::least;
  if (figure.amount->form == Form::at_most) return Bound::most;
  return measure::bound_before(words_before(check.document, figure.node), check.fiche.language);
}

/// The time for which a control point holds its last temperature: in its own words or an attribute of the figure.
std::optional<flow::TimeRange> time_beside(const Check& check, const fiche::Statement& figure) {
  if (const fiche::Statement* time = check.fiche.statement(figure.node, At::for_))
    return flow::time_meant(*time, check.kitchen);
  for (Node c = check.document.next(figure.node); c != fiche::none; c = check.document.next(c)) {
    const fiche::Statement* time = check.document.el(c) == El::time ? check.fiche.statement(c) : nullptr;
    if (time != nullptr) return flow::time_meant(*time, check.kitchen);
  }
  return std::nullopt;
}

/// Time in the temperature's stead: no longer than food may go without control, and thrown away then.
bool goes_by_time(const Check& check, const fiche::Statement& figure) {
  const auto time = time_beside(check, figure);
  const std::string action = base::lower(check.document.get(check.document.parent(figure.node), At::action));
  constexpr double hot = 30;  // °C: what is held below is held cold
  const SafetyLimit& alone =
      safety_limit(check.kitchen, low_of(figure).value_or(0) > hot ? "hot_tolerance" : "time_alone");
  return time && time->most && static_cast<double>(*time->most) <= alone.seconds && says_thrown_away(action);
}

void say(Check& check, const fiche::Statement& figure, const std::string& published, const SafetyLimit& limit) {
  say_limit(check, figure.where, "the control point asks for " + said_heat(figure) + "; published is " + published,
            limit, "set the limit to it");
}

/// A limit that kills: of poultry and mince by the pairs, of what is heated again by that.
void look_at_cooking(Check& check, int step, const fiche::Statement& figure) {
  const double least = low_of(figure).value_or(high_of(figure).value_or(0));
  const auto time = time_beside(check, figure);
  const double held = time ? static_cast<double>(time->least) : 0;
  if (const auto limit = cook_limit_of(check, step)) {
    if (!meets(limit->pairs, least, held))
      say(check, figure, asked(limit->pairs, least) + " for " + std::string(limit->food), limit->pairs.back());
    return;
  }
  const SafetyLimit& limit = safety_limit(check.kitchen, "reheating");
  if (!does(check, step, {"reheat"}) || least >= limit.celsius - hair || needs_cold(check, step) != Need::yes)
    return;
  say(check, figure, degrees(limit.celsius) + " for what is heated again and held hot", limit);
}

void look_at_holding(Check& check, int step, const fiche::Statement& figure) {
  const auto low = low_of(figure), high = high_of(figure);
  const Bound bound = bound_of(check, figure);
  if (bound == Bound::unclear) return;
  if (bound == Bound::least) {
    const SafetyLimit& limit = safety_limit(check.kitchen, "hot_holding");
    const double least = low.value_or(high.value_or(limit.celsius));
    if (least <= warm || least >= limit.celsius - hair || needs_cold(check, step) != Need::yes) return;
    if (goes_by_time(check, figure)) return;
    return say(check, figure, degrees(limit.celsius) + " or more for hot holding", limit);
  }
  if (!cooling_stages(check, check.document.parent(figure.node)).empty()) return;
  const SafetyLimit& limit = safety_limit(check.kitchen, "cold_holding");
  if (!high || *high > warm || *high <= limit.celsius + hair || needs_cold(check, step) != Need::yes) return;
  say(check, figure, degrees(limit.celsius) + " at most for cold holding", limit);
}

void look_at(Check& check, int step, Node control) {
  const std::string hazard = base::lower(check.document.get(control, At::hazard));
  const fiche::Statement* last = nullptr;
  for (Node c = check.document.first_child(control); c != fiche::none; c = check.document.next(c)) {
    const fiche::Statement* figure = check.document.el(c) == El::food_temp ? check.fiche.statement(c) : nullptr;
    if (figure != nullptr && figure->amount && figure->amount->has_figure()) last = figure;
  }
  if (last == nullptr) return;
  // Growth first: "growth of what survives as spores".
  if (says(hazard,
           {"grow", "toxin", "croissance", "développement", "wachstum", "vermehr", "crecimiento", "multiplic"}))
    return look_at_holding(check, step, *last);
  if (says(hazard, {"surviv", "survie", "überleb", "superviv", "undercook", "raw"}))
    look_at_cooking(check, step, *last);
}

void run(Check& check) {
  for (int step = 0; step < static_cast<int>(check.flow.steps.size()); ++step) {
    const Node node = check.flow.steps[at(step)].node;
    for (Node c = check.document.first_child(node); c != fiche::none; c = check.document.next(c)) {
      if (check.document.el(c) == El::control) look_at(check, step, c);
    }
  }
}

}  // namespace

/// A control point whose limit is weaker than what is published.
const Rule control_weaker_than_limit = {
    .id = "control-weaker-than-limit",
    .severity = base::Severity::warning,
    .topic = "safety",
    .summary = "a control point whose limit is weaker than what is published",
    .explanation =
        R"(A control point that is met on every sheet and lets the food stand at 50 °C guards nothing. Its limit may be
stricter than what is published, not weaker without a reason.

Held against is the last temperature of a control point: where its hazard grows, a least above 35 °C with hot holding, a most
below with cold holding, of food that needs it; where its hazard survives, with the pairs of temperature and time for raw
poultry and mince, and with reheating in a step that reheats. One that says how fast to cool is cooled-too-slowly's; one that
puts a time beside the heat, of four hours at most, and throws away what is left then, goes by time. The kitchen file says
whose limits the house works to (limits). Local rules and licensed persons decide.)",
    .bad = R"(    <ingredient id="breast" food="chicken-breast">1 kg</ingredient>
    <step do="roast" on="oven-1">Roast the <use of="breast">breasts</use> at <oven-temp mode="fan">180 °C</oven-temp>.
      <control hazard="survival of bacteria" check="probe" often="each tray" who="the cook" action="roast on">The core
      reaches <food-temp place="core">at least 57 °C</food-temp>.</control></step>)",
    .good = R"(    <ingredient id="breast" food="chicken-breast">1 kg</ingredient>
    <step do="roast" on="oven-1">Roast the <use of="breast">breasts</use> at <oven-temp mode="fan">180 °C</oven-temp>.
      <control hazard="survival of bacteria" check="probe" often="each tray" who="the cook" action="roast on">The core
      reaches <food-temp place="core">at least 74 °C</food-temp>.</control></step>)",
    .source = "FDA Food Code 3-401.11, 3-403.11 and 3-501.16, or the limits that the kitchen file chooses",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
