#include <algorithm>
#include <array>
#include <cmath>

#include "core/physics/boiling_point.h"
#include "core/rules/figure_text.h"
#include "core/rules/phrases.h"
#include "core/rules/registry.h"
#include "core/rules/stated_heat.h"
#include "core/rules/trade_figures.h"

namespace tamis::rules {
namespace {

struct Stage {
  std::string_view phrases;
  const TradeFigure& figure;
};

const std::array<Stage, 11> stages{
    {{"thread stage|soft thread|long thread|au filé|au petit filé|au grand filé", figures::sugar_thread},
     {"soft ball|soft-ball|petit boulé|petite boule", figures::sugar_soft_ball},
     {"firm ball|firm-ball", figures::sugar_firm_ball},
     {"hard ball|hard-ball|grand boulé|gros boulé", figures::sugar_hard_ball},
     {"soft crack|soft-crack|petit cassé", figures::sugar_soft_crack},
     {"hard crack|hard-crack|grand cassé|gros cassé", figures::sugar_hard_crack},
     {"ballon mou", figures::sugar_soft_ball},
     {"schwacher flug", figures::sugar_thread},
     {"bola blanda", figures::sugar_soft_ball},
     {"bola dura", figures::sugar_hard_ball},
     {"punto de hebra", figures::sugar_thread}}};

constexpr double margin = 4;  // K: tables differ by 2 to 4 K, and thermometers by one

/// The one stage that a sentence names; null where it names none or several.
const Stage* stage_in(std::string_view sentence) {
  const Stage* found = nullptr;
  for (const Stage& stage : stages) {
    if (!has_phrase(sentence, stage.phrases)) continue;
    if (found != nullptr) return nullptr;
    found = &stage;
  }
  return found;
}

std::string_view word_in(std::string_view sentence, const Stage& stage) {
  std::string_view rest = stage.phrases;
  while (true) {
    const std::string_view one = rest.substr(0, rest.find('|'));
    if (find_phrase(sentence, one) != std::string_view::npos || one.size() == rest.size()) return one;
    rest.remove_prefix(one.size() + 1);
  }
}

/// By how much everything that boils off its water is colder at the kitchen's height.
double lower_here(const Check& check) {
  const auto& height = check.kitchen.altitude_m;
  return height ? physics::boiling_point(0) - physics::boiling_point(height->approximate()) : 0;
}

std::string range_text(double low, double high) {
  return std::to_string(std::lround(low)) + "–" + figure_text(std::round(high), measure::Kind::temperature);
}

void look_at(Check& check, fiche::Node step) {
  const std::vector<StatedHeat>& heats = stated_heats(check, step);
  if (heats.empty()) return;
  const double here = lower_here(check);
  for (const StatedHeat& heat : heats) {
    if (heat.el != fiche::El::food_temp || !heat.low || !heat.high || *heat.low < physics::boiling_point(0) - here) continue;
    const auto same = [&](const StatedHeat& other) { return other.el == heat.el && other.sentence == heat.sentence; };
    if (std::count_if(heats.begin(), heats.end(), same) != 1) continue;
    const std::vector<std::string>& sentences = sentences_of(check, step);
    const auto place = static_cast<std::size_t>(heat.sentence);
    if (place >= sentences.size()) continue;
    const Stage* stage = stage_in(sentences[place]);
    if (stage == nullptr) continue;
    // What is written for the sea and what is written for this kitchen are both right.
    const double least = stage->figure.low - here - margin, most = stage->figure.high + margin;
    if (*heat.high >= least && *heat.low <= most) continue;
    std::string usual = range_text(stage->figure.low, stage->figure.high);
    if (here >= 1) usual += ", here " + range_text(stage->figure.low - here, stage->figure.high - here);
    check.say(
        heat.statement->where,
        "\"" + std::string(word_in(sentences[place], *stage)) + "\" is sugar at " + usual + ", not at " + heat.statement->text,
        "one of the two is wrong: keep the one you test by, and drop a little in cold water");
  }
}

void run(Check& check) {
  for (const fiche::Step& step : check.fiche.steps) look_at(check, step.node);
}

}  // namespace

/// A word for a stage of boiled sugar beside a temperature of another stage.
const Rule sugar_stage_against_figure = {
    .id = "sugar-stage-against-figure",
    .severity = base::Severity::warning,
    .topic = "temperature",
    .summary = "a stage of boiled sugar (soft ball, hard crack) beside a temperature of another one",
    .explanation =
        R"(A syrup tests as a soft ball at 112 to 116 °C and cracks hard at 149 to 154 °C. Where word and figure part, the cook
follows one of the two, and the meringue weeps or the toffee breaks a tooth. Hot sugar burns deeply: gloves, and a bowl
of cold water within reach.

Held together are one temperature of the food and one stage named in the same sentence, with a margin of 4 K for what
tables and thermometers differ by; at a kitchen above the sea the figure may be the sea's or its own. Below boiling water a
"soft ball" is one of dough.)",
    .bad = R"(    <step>Boil the sugar and water to <food-temp>138 °C</food-temp>, the soft-ball stage.</step>)",
    .good = R"(    <step>Boil the sugar and water to <food-temp>115 °C</food-temp>, the soft-ball stage.</step>)",
    .source =
        "confectionery tables: thread 230 to 234 °F, firm ball 244 to 248, hard ball 250 to 265, hard crack 300 to 310; soft "
        "ball and "
        "soft crack: common practice",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
