#include "core/rules/figure_text.h"
#include "core/rules/oven_figure.h"
#include "core/rules/registry.h"

namespace tamis::rules {
namespace {

using measure::Kind;

std::string bare_figure(const OvenFigure& figure) {
  std::string text = figure_text(figure.on_other_scale, Kind::temperature);
  return text.substr(0, text.find(' '));
}

void run(Check& check) {
  for (const OvenFigure& figure : oven_figures(check)) {
    if (figure.verdict != OvenFigure::Verdict::other_scale) continue;
    const std::string& text = figure.statement->text;
    const std::string reach = (figure.kitchens_own ? "this kitchen's ovens go (" : "most ovens go (") +
                              figure_text(figure.oven_most, Kind::temperature) + ")";
    if (figure.celsius > figure.oven_most) {
      const std::string number = figure_text(figure.celsius, Kind::temperature);
      check.say(figure.statement->where,
                text + " is hotter than " + reach + "; " + number.substr(0, number.find(' ')) + " °F would be " +
                    figure_text(figure.on_other_scale, Kind::temperature),
                "if Fahrenheit was meant, write °F");
    } else {
      check.say(figure.statement->where,
                text + " is " + figure_text(figure.celsius, Kind::temperature) + ", too cool to bake at; " +
                    bare_figure(figure) + " °C would be usual",
                "if Celsius was meant, write °C");
    }
  }
}

}  // namespace

/// An oven figure that is out of the oven's reach, and would be a usual one on the other scale.
const Rule other_scale_suspected = {
    .id = "other-scale-suspected",
    .severity = base::Severity::warning,
    .topic = "measure",
    .summary = "an oven figure that looks like the other scale",
    .explanation = R"(350 is a usual oven figure in Fahrenheit and one that few ovens reach in Celsius; 180 is usual in
Celsius and keeps plates warm in Fahrenheit. The wrong letter burns the batch or leaves it raw.

The figure is held against the kitchen's own ovens (least and most in the kitchen file); without them against 60 to
300 °C, or 500 °C for deck, pizza, stone and wood ovens. Low Fahrenheit figures count only where something is baked
for up to 75 minutes, not where it is dried, held, proved or cooked slowly. The rule is silent where a second figure
(also, was) stands beside the first.)",
    .bad = R"(    <step>Bake at <oven-temp mode="static">350 °C</oven-temp> for <time>25 min</time>.</step>)",
    .good = R"(    <step>Bake at <oven-temp mode="static">350 °F</oven-temp> for <time>25 min</time>.</step>)",
    .source = "common practice",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
