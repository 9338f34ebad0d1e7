#include "core/base/utf8.h"
#include "core/rules/near_miss.h"
#include "core/rules/registry.h"
#include "core/rules/sentence.h"
#include "core/rules/stated_heat.h"

namespace tamis::rules {
namespace {

using fiche::At;
using fiche::El;
using fiche::Statement;

/// °C that no fridge or freezer is set to; a blast chiller has none of these names.
constexpr double freezer_most = -5;  // a freezer holds -18 °C, an ice-cream cabinet -12 °C (common practice)
constexpr double fridge_least = -3;  // superchilled fish is kept at -2 °C (common practice)
constexpr double fridge_most = 15;   // a wine or chocolate cabinet holds 12 to 15 °C (common practice)

bool says_freezer(std::string_view words) {
  return says(words, {"freezer", "deep freeze", "deep-freeze", "congélateur", "congelador", "gefrierschrank", "tiefkühl"});
}
bool says_fridge(std::string_view words) {
  return says(words, {"fridge", "refrigerator", "réfrigérateur", "frigo", "kühlschrank", "nevera", "frigorífico"});
}

void hold_against(Check& check, const Statement& figure, std::string_view place, base::Span where_said) {
  const bool freezer = says_freezer(place);
  if (freezer == says_fridge(place)) return;  // neither, or both
  const auto low = low_of(figure);
  const auto high = high_of(figure);
  // "At most 4 °C" holds in a freezer too, and says nothing of one.
  const double warmest = high ? *high : *low;
  const double coldest = low ? *low : *high;
  const bool wrong = freezer ? coldest > freezer_most : warmest < fridge_least || coldest > fridge_most;
  if (!wrong) return;
  check.say(figure.where, figure.text + (freezer ? " is no freezer's temperature" : " is no fridge's temperature"),
            "correct the figure, or the place")
      .related.push_back({where_said, "the place", {}, {}, {}});
}

void look_at_keep(Check& check, const Statement& figure) {
  const fiche::Attr where = check.document.find(figure.node, At::where);
  if (where == fiche::none) return;
  hold_against(check, figure, base::lower(check.document.attribute_value(where)), check.document.value_span(where));
}

void look_at_medium(Check& check, const Statement& figure) {
  const fiche::Node step = step_of(check.document, figure.node);
  if (step == fiche::none) return;
  const fiche::Attr of = check.document.find(figure.node, At::of);
  const fiche::Attr on = check.document.find(step, At::on);
  if (of != fiche::none) {
    hold_against(check, figure, base::lower(check.document.attribute_value(of)), check.document.value_span(of));
  } else if (on != fiche::none && check.document.get(step, At::do_).find(' ') == std::string_view::npos) {
    // "prove at 27 °C, then chill" ends in the fridge, and the figure is of what comes before.
    const std::string_view place = check.document.attribute_value(on);
    if (place == "fridge" || place == "freezer") hold_against(check, figure, place, check.document.value_span(on));
  }
}

void run(Check& check) {
  for (const Statement& figure : check.fiche.statements) {
    if (figure.value != fiche::Value::temperature || !figure.amount || !figure.amount->has_figure()) continue;
    const El el = check.document.el(figure.node);
    if (el == El::keep && figure.at == At::at) look_at_keep(check, figure);
    if (el == El::medium_temp && figure.at == At::unknown) look_at_medium(check, figure);
  }
}

}  // namespace

/// "Freezer" with a fridge's figure, or the other way round.
const Rule cold_place_against_figure = {
    .id = "cold-place-against-figure",
    .severity = base::Severity::warning,
    .topic = "temperature",
    .summary = "a freezer at a fridge's temperature, or a fridge at a freezer's",
    .explanation = R"(Kept "in the freezer, at 4 °C": either the place or the figure is wrong, and how long the food keeps hangs on
it. Mostly a minus sign is missing.

Where fridge and freezer are both named, nothing is said.)",
    .bad = R"(    <step>Make the parfait.</step>
    <keep where="freezer" at="18 °C" for="2 weeks"/>)",
    .good = R"(    <step>Make the parfait.</step>
    <keep where="freezer" at="-18 °C" for="2 weeks"/>)",
    .source = "common practice: fridges hold 0 to 8 °C, freezers -18 °C and colder",
    .schemas = "",
    .run = run,
};

}  // namespace tamis::rules
