#include <cmath>

#include "core/base/says.h"
#include "core/base/utf8.h"
#include "core/change/stand_in.h"
#include "core/change/subject.h"
#include "core/change/swap_work.h"
#include "core/change/sweetness.h"
#include "core/fiche/prose.h"
#include "core/rules/figure_text.h"
#include "core/rules/step_name.h"

namespace tamis::change {

using base::Ratio;
using fiche::At;
using fiche::El;
using fiche::Node;

namespace {

std::string grams_text(double grams) { return rules::figure_text(grams, measure::Kind::mass); }

/// "44.3 g less water": nothing where it is less than a two-hundredth of the line, or half a gram.
void more_or_less(std::string& out, double change, double of, std::string_view what) {
  if (std::isnan(change) || std::abs(change) < 0.005 * of || std::abs(change) < 0.5) return;
  out += (out.empty() ? "" : ", ") + grams_text(std::abs(change)) + (change > 0 ? " more " : " less ") + std::string(what);
}

/// What a constituent of the whole changes by, in g; NaN where the table lacks it.
template <class Part>
double change_of(const LineSwap& swap, Part part) {
  const double own = swap.own_g->approximate();
  double after = 0;
  for (std::size_t i = 0; i < swap.stands.size(); ++i) {
    after += own * swap.made.lines[i].factor.approximate() * part(swap.stands[i].food->per_100_g) / 100;
  }
  return after - own * part(swap.own.food->per_100_g) / 100;
}

bool has_milk_solids(const food::Food& food) { return food.id.starts_with("butter-") || food.role == food::Role::dairy; }

std::string whole(const LineSwap& swap) {
  if (!swap.own_g) return {};
  using C = food::Composition;
  const double own = swap.own_g->approximate();
  std::string out;
  if (!swap.water_g) more_or_less(out, change_of(swap, [](const C& c) { return c.water; }), own, "water");
  if (!swap.made.fat_stays) more_or_less(out, change_of(swap, [](const C& c) { return c.fat; }), own, "fat");
  if (has_milk_solids(*swap.own.food)) {
    more_or_less(
        out,
        change_of(swap,
                  [](const C& c) { return 100 - c.water - c.fat - (std::isnan(c.sodium_mg) ? 0 : c.sodium_mg * 0.00254); }),
        own, "milk solids");
    more_or_less(out, change_of(swap, [](const C& c) { return c.sodium_mg * 0.0025; }), own, "salt");
  } else if (!swap.made.sweetness) {
    more_or_less(out, change_of(swap, [](const C& c) { return c.sugars; }), own, "sugar");
  }
  return out;
}

std::string sweetness(const LineSwap& swap) {
  if (!swap.made.sweetness || !swap.own_g) return {};
  const fiche::Kitchen& kitchen = *swap.own.fiche->kitchen;
  const auto before = sweetness_of(general_food(kitchen, swap.own.food_id));
  const auto after = sweetness_of(general_food(kitchen, swap.stands[0].id));
  if (!before || !after) return {};
  const double solids = swap.own_g->approximate() * (100 - swap.own.food->per_100_g.water) / 100;
  return "it sweetens as " + grams_text(solids * *after) + " of sugar, the author's as " + grams_text(solids * *before);
}

std::string water_words(const LineSwap& swap) {
  if (!swap.water_g || *swap.water_g == 0) return {};
  const double grams = swap.water_g->approximate();
  return grams_text(std::abs(grams)) + (grams > 0 ? " taken off the water" : " put onto the water");
}

std::string message_of(const LineSwap& swap) {
  std::string names, amounts;
  for (std::size_t i = 0; i < swap.made.lines.size(); ++i) {
    names += (names.empty() ? "\"" : " and \"") + swap.made.lines[i].english + "\"";
    if (i < swap.shown.size()) amounts += (amounts.empty() ? ": " : " and ") + swap.shown[i];
  }
  std::string out = "\"" + swap.own.name + "\" becomes " + names + amounts + "; " + swap.made.how;
  for (const std::string& more : {water_words(swap), whole(swap), sweetness(swap)}) {
    if (!more.empty()) out += "; " + more;
  }
  return out;
}

bool names_it(const fiche::Document& document, Node use, std::string_view id) {
  return !id.empty() &&
         (" " + std::string(document.get(use, At::of)) + " ").find(" " + std::string(id) + " ") != std::string::npos;
}

/// Marks of the food in the step's sentence and in what explains it; else the step, where it names the food in words.
void name_in_step(const fiche::Fiche& fiche, const OwnLine& own, const fiche::Step& step, std::vector<base::Related>& out) {
  const fiche::Document& document = *fiche.document;
  const std::string name = base::lower(own.name);
  bool marked = false;
  for (const Node use : step.uses) {
    if (!names_it(document, use, own.line->id)) continue;
    marked = true;
    const std::string all = document.all_text(use);
    const std::string words(base::trimmed(all));
    out.push_back({document.head_span(use), "the sentence says \"" + words + "\": see that it still fits", {}, {}, {}});
  }
  if (name.empty() || step.component != own.line->component) return;
  if (!marked && base::says(rules::own_sentence(document, step.node), {name})) {
    out.push_back({document.head_span(step.node), "the sentence names " + own.name + ": see that it still fits", {}, {}, {}});
  }
  for (Node c = document.first_child(step.node); c != fiche::none; c = document.next(c)) {
    if (document.kind(c) != fiche::NodeKind::element || fiche::is_mark(document, c) ||
        !base::says(base::lower(document.all_text(c)), {name}))
      continue;
    out.push_back({document.head_span(c), "this names " + own.name + " too", {}, {}, {}});
  }
}

}  // namespace

std::vector<base::Related> places_of(const fiche::Fiche& fiche, const OwnLine& own) {
  const fiche::Document& document = *fiche.document;
  const std::string_view id = own.line->id;
  std::vector<base::Related> out;
  for (const fiche::Step& step : fiche.steps) name_in_step(fiche, own, step, out);
  for (const fiche::Ingredient& line : fiche.ingredients) {
    for (const At at : {At::as_much_as, At::for_each, At::tops_up}) {
      if (id.empty() || document.get(line.node, at) != id) continue;
      out.push_back({document.head_span(line.node), "its amount follows the line that was swapped", {}, {}, {}});
    }
  }
  return out;
}

void tell_swap(Work& work, const LineSwap& swap) {
  const bool french = work.author.language.starts_with("fr");
  const std::size_t before = work.findings.size();
  work.say("food-swapped", base::Severity::advice, work.author.document->head_span(swap.own.line->node), message_of(swap),
           swap.made.english.empty() ? "try one batch" : swap.made.english, swap.made.source);
  if (work.findings.size() > before) work.findings.back().related = swap.related;
  std::string names;
  for (const StandIn& line : swap.made.lines)
    names += (names.empty() ? "" : french ? " et " : " and ") + (french ? line.french : line.english);
  const std::string& care = french ? swap.made.french : swap.made.english;
  write_note(
      work.document, swap.own.line->node, swap_note,
      names + (french ? " au lieu de " : " for ") + swap.own.name + (care.empty() ? "" : (french ? " ; " : "; ") + care));
}

}  // namespace tamis::change
