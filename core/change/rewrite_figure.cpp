#include "core/change/rewriter.h"

#include <algorithm>

namespace tamis::change {

using base::Ratio;
using fiche::Statement;
using measure::Amount;
using measure::Kind;
using measure::System;

namespace {

constexpr const char* tolerance_source = "the food's tolerance (common practice)";

}  // namespace

std::optional<Passage> Rewriter::passage(const Pair& pair, Kind from, Kind to) const {
  Passage way{to, 1, 0};
  const bool swapped = pair.swap != nullptr && pair.swap->mass_factor != 1;
  if (from == to && !swapped) return way;
  if (swapped) way.factor = pair.swap->mass_factor;
  if (from == Kind::volume && (to == Kind::mass || swapped)) {
    const auto density = density_of(work_.author, pair.subject);
    if (!density) return from == to ? std::optional(way) : std::nullopt;
    way.factor = way.factor * density->grams_per_ml;
  }
  if (from == Kind::count) {
    const auto piece = pair.subject.food == nullptr ? std::nullopt : food::piece_of(*pair.subject.food);
    if (!piece) return std::nullopt;
    way.factor = way.factor * piece->grams;
  }
  if (to == Kind::volume) {
    Subject now = pair.subject;
    if (pair.swap != nullptr && pair.swap->food != nullptr) now.food = pair.swap->food;
    const auto density = density_of(work_.author, now);
    if (!density) return std::nullopt;
    way.factor = way.factor / density->grams_per_ml;
  }
  return way;
}

Target Rewriter::target(const Pair& pair, System units) const {
  return {units,           &work_.kitchen.tools, pair.subject.tolerance,
          pair.subject.oven, pair.subject.gate,  pair.subject.control};
}

std::optional<Choice> Rewriter::converted(const Pair& pair, const Statement& from, const Amounts& amounts,
                                const Passage& way, System units) {
  Choice made;
  std::vector<measure::Rounded> ends;
  for (const Amount& amount : amounts) {
    auto figure = amount.has_figure() ? convert_figure(amount, way, target(pair, units)) : std::nullopt;
    if (!figure) return std::nullopt;
    if (comes_to_nothing(*figure)) return too_small(from, amounts);
    made.amounts.push_back(std::move(figure->amount));
    ends.insert(ends.end(), figure->ends.begin(), figure->ends.end());
  }
  made.text = from.value == fiche::Value::length ? write_lengths(made.amounts, work_.after)
                                                 : write_figure(made.amounts.front(), work_.after);
  say_rounding(pair, from, made, ends);
  return made;
}

bool Rewriter::comes_to_nothing(const Figure& figure) {
  return std::any_of(figure.ends.begin(), figure.ends.end(), [](const measure::Rounded& end) {
    return end.amount.kind != Kind::temperature && end.exact > 0 && end.amount.low_base() == 0;
  });
}

std::optional<Choice> Rewriter::too_small(const Statement& from, const Amounts& amounts) {
  work_.say("conversion-beyond-tolerance", base::Severity::warning, from.where,
            "\"" + from.text + "\" stays: it is too little to be measured in " +
                std::string(measure::system_name(units_)) + " units",
            "weigh it as written", tolerance_source);
  if (stays_readable(from, amounts)) return std::nullopt;
  return Choice{{amounts.front()}, write_exactly(amounts, work_.after), false};
}

void Rewriter::say_rounding(const Pair& pair, const Statement& from, const Choice& made,
                  const std::vector<measure::Rounded>& ends) {
  for (const measure::Rounded& end : ends) {
    if (end.within) continue;
    const bool strict = pair.subject.tolerance.share <= Ratio(2, 100);
    work_.say("conversion-beyond-tolerance", strict ? base::Severity::warning : base::Severity::advice, from.where,
              "\"" + from.text + "\" becomes \"" + made.text + "\", " + percent(end.share) + " off; " +
                  name_of(work_.author, pair.subject) + " allows " +
                  percent(pair.subject.tolerance.share.approximate()),
              end.better.empty() ? "weigh it" : end.better, tolerance_source);
    return;
  }
}

}  // namespace tamis::change
