#include <algorithm>

#include "core/change/author.h"
#include "core/change/figure.h"
#include "core/change/kept.h"
#include "core/change/stand_in.h"
#include "core/change/swap_work.h"

namespace tamis::change {

using base::Ratio;
using fiche::At;
using fiche::Fiche;
using fiche::Ingredient;
using measure::Amount;

namespace {

/// The one line of water that is of the food, with an exact mass or volume; null where there is none, or several.
const Ingredient* water_of(const Fiche& fiche, fiche::Node component) {
  const Ingredient* found = nullptr;
  for (const Ingredient& line : fiche.ingredients) {
    const std::string_view purpose = fiche.document->get(line.node, At::purpose);
    if (line.component != component || line.food == nullptr || line.food->id != "water" ||
        (!purpose.empty() && purpose != "food"))
      continue;
    if (found != nullptr) return nullptr;
    found = &line;
  }
  return found;
}

OwnLine own_line(const Fiche& fiche, const Ingredient& line, const food::Food* food) {
  return {&fiche, &line, std::string(line.food_id), food, std::string(line.name), stands_in_here(*fiche.document, line.node)};
}

Ratio share_of_water(const food::Food& food) { return in_100_g(food.per_100_g.water).value_or(0) / 100; }

/// Water that the line's sugar brings more than the author's: by figures as they stand in the document.
std::optional<Ratio> brought(const Fiche& now, const Ingredient& line) {
  const std::string_view was = now.document->get(line.node, At::was_food);
  if (was.empty() || was == no_line) return std::nullopt;
  const std::string_view from = general_food(*now.kitchen, was);
  const std::string_view to = general_food(*now.kitchen, line.food_id);
  const food::Food* own = now.kitchen->find_food(was);
  if (own == nullptr || line.food == nullptr || !swap_kinds_move_water(from, Foods(&to, 1))) return std::nullopt;
  const auto before = own_grams(now, own_line(now, line, own));
  const auto* text = now.statement(line.node);
  if (!before || text == nullptr) return std::nullopt;
  const Ratio solids = *before * (1 - share_of_water(*own));
  const Ratio after = solids / (1 - share_of_water(*line.food));
  return after * share_of_water(*line.food) - *before * share_of_water(*own);
}

}  // namespace

bool swap_kinds_move_water(std::string_view from, Foods to) {
  const auto kinds = swap_kinds();
  return std::any_of(kinds.begin(), kinds.end(),
                     [&](const SwapKind* kind) { return kind->moves_water && kind->fits(from, to); });
}

void move_water(Work& work, std::vector<LineSwap>& swaps) {
  const Fiche now = fiche::read_fiche(work.document, work.kitchen);
  for (const fiche::Node component : now.components) {
    const bool ours = std::any_of(swaps.begin(), swaps.end(), [component](const LineSwap& swap) {
      return swap.own.line->component == component && (swap.kind == nullptr || swap.kind->moves_water);
    });
    const Ingredient* water = ours ? water_of(now, component) : nullptr;
    if (water == nullptr) continue;
    Ratio off = 0;
    bool any = false;
    for (const Ingredient& line : now.ingredients) {
      const auto more = line.component == component ? brought(now, line) : std::nullopt;
      if (!more) continue;
      off = off + *more;
      any = true;
    }
    fiche::Document& document = work.document;
    if (!any) {
      if (stands_in_here(document, water->node)) restore_element(document, water->node);
      continue;
    }
    const fiche::Statement* statement = now.statement(water->node);
    const auto figures =
        statement == nullptr ? std::vector<Amount>{} : own_figures(now, *statement, stands_in_here(document, water->node));
    const OwnLine own = own_line(now, *water, water->food);
    const auto grams = own_grams(now, own);
    if (!grams || figures.size() != 1 || !(*grams - off > 0)) continue;
    const Ratio share = (*grams - off) / *grams;
    const measure::Tolerance exact{food::tolerance_of(water->food->role)};
    measure::System system = measure::System::metric;
    const auto shown = figures_of(*statement);
    if (!shown.empty() && stands_in(shown[0], measure::System::us) && !stands_in(shown[0], measure::System::metric)) {
      system = measure::System::us;
    }
    const auto made = convert_figure(figures[0], {figures[0].kind, share, 0}, {system, &work.kitchen.tools, exact});
    if (!made) continue;
    const std::string text = write_figure(made->amount, work.after);
    if (document.find(water->node, At::was) != fiche::none) {
      put_text(document, water->node, text);
    } else {
      write_over(document, water->node, At::unknown, text);
    }
    if (!stands_in_here(document, water->node)) {
      write_over(document, water->node, At::food, std::string(document.get(water->node, At::food)));
      if (const std::string name(document.get(water->node, At::name)); !name.empty())
        write_over(document, water->node, At::name, name);
    }
    for (LineSwap& swap : swaps) {
      if (swap.own.line->component == component && swap.kind != nullptr && swap.kind->moves_water) swap.water_g = off;
    }
  }
}

}  // namespace tamis::change
