#include "core/change/scale_figures.h"

#include <algorithm>

#include "core/change/work.h"

namespace tamis::change {

using base::Ratio;
using base::Severity;
using fiche::At;
using fiche::Statement;
using measure::Amount;
using measure::Kind;
using measure::System;

namespace {

System system_of(const Amount& amount) {
  for (const auto* parts : {&amount.low, &amount.high}) {
    for (const measure::Quantity& part : *parts) {
      const System system = part.unit->system;
      if (system == System::us || system == System::imperial) return system;
    }
  }
  return System::metric;
}

/// A metric cup or spoon, which stays one.
bool is_metric_spoon(const Amount& amount) {
  return amount.form == Amount::Form::exact && amount.kind == Kind::volume && !amount.low.empty() &&
         std::all_of(amount.low.begin(), amount.low.end(),
                     [](const measure::Quantity& part) { return part.unit->system == System::metric; });
}

}  // namespace

std::string Figures::measured(const Statement& said, const Amount& amount, Ratio factor, const Subject& subject) {
  if (is_metric_spoon(amount)) {
    const Ratio exact = amount.low_base() * factor;
    const measure::Rounded made =
        measure::round_spoons(exact, System::metric, work_.kitchen.tools, subject.tolerance);
    Amount shown = made.amount;
    shown.about = amount.about;
    const std::string text = write_figure(shown, fiche_.reading);
    say_rounding(said, text, {made}, subject, factor);
    return text;
  }
  const Target target{system_of(amount), &work_.kitchen.tools, subject.tolerance, false, false, false};
  const auto figure = convert_figure(amount, {amount.kind, factor, 0}, target);
  if (!figure || comes_to_nothing(*figure)) {
    work_.say("not-scaled", Severity::warning, said.where,
              "\"" + said.text + "\" was left as it is: " + work_.text(factor) + " times it cannot be measured here",
              "weigh it on finer scales, or make a larger batch and keep the rest");
    return said.text;
  }
  const std::string text = write_figure(figure->amount, fiche_.reading);
  say_rounding(said, text, figure->ends, subject, factor);
  return text;
}

bool Figures::comes_to_nothing(const Figure& figure) {
  return std::any_of(figure.ends.begin(), figure.ends.end(), [](const measure::Rounded& end) {
    return end.exact > 0 && end.amount.low_base() == 0;
  });
}

void Figures::say_rounding(const Statement& said, const std::string& text, const std::vector<measure::Rounded>& ends,
                  const Subject& subject, Ratio factor) {
  if (said.at == At::also) return;  // the text is the figure that counts
  for (const measure::Rounded& end : ends) {
    if (end.within) continue;
    const bool strict = subject.tolerance.share <= Ratio(2, 100);
    work_.say("scaled-beyond-tolerance", strict ? Severity::warning : Severity::advice, said.where,
              work_.text(factor) + " times \"" + said.text + "\" becomes \"" + text + "\", " + percent(end.share) +
                  " off; " + name_of(fiche_, subject) + " allows " + percent(subject.tolerance.share.approximate()),
              end.better.empty() ? "weigh it" : end.better, "the food's tolerance (common practice)");
    return;
  }
}

}  // namespace tamis::change
