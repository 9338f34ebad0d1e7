#include "core/rules/oven_figure.h"

#include <algorithm>

#include "core/rules/figure_value.h"
#include "core/rules/sentence.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;
using fiche::Statement;
using Verdict = OvenFigure::Verdict;

constexpr double coldest_oven = 15;   // °C; a proofing cabinet starts at about 25 °C (common practice)
constexpr double hottest_oven = 550;  // °C; a wood-fired oven's floor reaches about 500 °C (common practice)

struct Reach {
  double least;
  double most;
  bool own;
};

constexpr double usual_most = 300;

Reach usual_reach(const Check& check, fiche::Node n, double celsius) {
  if (celsius <= usual_most) return {60, usual_most, false};
  const bool deck = check.document.get(n, At::mode) == "deck" || check.document.find(n, At::top) != fiche::none;
  const bool hot = deck || says(words_around(check.document, n), {"pizza", "wood", "stone", "tandoor", "clay", "bois", "holz"});
  return {60, hot ? 500 : usual_most, false};
}

Reach reach_of(const Check& check, fiche::Node n, double celsius) {
  Reach reach = usual_reach(check, n, celsius);
  bool stated = false;
  for (const fiche::Kitchen::Oven& oven : check.kitchen.ovens) {
    if (!oven.most_c) continue;
    const double most = oven.most_c->approximate();
    const double least = oven.least_c ? oven.least_c->approximate() : reach.least;
    reach = stated ? Reach{std::min(reach.least, least), std::max(reach.most, most), true} : Reach{least, most, true};
    stated = true;
  }
  return reach;
}

/// Longest time of the step in seconds; 0 when it states none.
double longest_time(const Check& check, fiche::Node step) {
  double longest = 0;
  for (const Statement& statement : check.fiche.statements) {
    if (statement.value != fiche::Value::duration || !statement.amount || !statement.amount->has_figure()) continue;
    if (step_of(check.document, statement.node) != step) continue;
    longest = std::max(longest, highest_of(*statement.amount));
  }
  return longest;
}

/// Drying, holding, proving and slow cooking are done at figures that look low.
bool is_gentle(std::string_view words) {
  return says(words, {"dry", "dried", "dehydrat", "meringue", "warm", "keep", "hold", "slow", "low ", "prove", "proof",
                      "rise", "overnight", "pull", "sécher", "maintenir", "trocknen", "warmhalten", "confit"});
}

/// "180 °F": 82 °C is too little to bake with, 180 °C is a usual figure.
bool is_cold_fahrenheit(const Check& check, const OvenFigure& figure, double on_other) {
  if (on_other < 140 || on_other > figure.oven_most || figure.celsius >= 115) return false;
  const fiche::Node step = step_of(check.document, figure.statement->node);
  if (step == fiche::none || is_gentle(words_around(check.document, step))) return false;
  const double longest = longest_time(check, step);
  return figure.celsius < figure.oven_least || (longest > 0 && longest <= 75 * 60);
}

OvenFigure judge(const Check& check, const Statement& statement) {
  OvenFigure figure;
  figure.statement = &statement;
  const measure::Amount& amount = *statement.amount;
  figure.celsius = highest_of(amount);
  const measure::Quantity& written = amount.low.empty() ? amount.high.front() : amount.low.front();
  const Reach reach = reach_of(check, statement.node, figure.celsius);
  figure.oven_least = reach.least;
  figure.oven_most = reach.most;
  figure.kitchens_own = reach.own;
  const bool beside_another = check.document.find(statement.node, At::also) != fiche::none ||
                              check.document.find(statement.node, At::was) != fiche::none;
  if (figure.celsius < coldest_oven) {
    figure.verdict = Verdict::no_ovens;
  } else if (written.unit->id == "degc" && figure.celsius > reach.most && !beside_another) {
    figure.on_other_scale = (figure.celsius - 32) * 5 / 9;
    const bool fits = figure.on_other_scale >= 90 && figure.on_other_scale <= std::min(reach.most, usual_most);
    if (fits) figure.verdict = Verdict::other_scale;
  } else if (written.unit->id == "degf" && !beside_another) {
    figure.on_other_scale = written.value.approximate();
    if (is_cold_fahrenheit(check, figure, figure.on_other_scale)) figure.verdict = Verdict::other_scale;
  }
  if (figure.verdict == Verdict::good && figure.celsius > hottest_oven) figure.verdict = Verdict::beyond_belief;
  return figure;
}

}  // namespace

std::vector<OvenFigure> oven_figures(const Check& check) {
  std::vector<OvenFigure> out;
  for (const Statement& statement : check.fiche.statements) {
    if (check.document.el(statement.node) != El::oven_temp || statement.value != fiche::Value::temperature) continue;
    const bool judged = statement.at == At::unknown || statement.at == At::top || statement.at == At::bottom;
    if (judged && statement.amount && statement.amount->has_figure()) out.push_back(judge(check, statement));
  }
  return out;
}

}  // namespace tamis::rules
