#include "core/change/scale_figures.h"

namespace tamis::change {

using base::Ratio;
using base::Severity;
using fiche::At;
using fiche::Node;
using fiche::Statement;

void Figures::makes(Node yield) {
  const bool own = document_.parent(yield) == document_.root();
  if (own && (work_.yields.empty() || yield != work_.yields.front())) return;
  if (own && work_.verbatim) return;
  const Node to = own ? work_.written : yield;
  for (const At at : {At::portions, At::pieces, At::spare}) {
    if (const auto count = work_.number(yield, at)) document_.set_attribute(to, at, number_text(*count, at));
  }
  for (const At at : {At::mass, At::volume}) {
    const Statement* said = fiche_.statement(yield, at);
    if (said == nullptr || !said->amount || !said->amount->has_figure()) continue;
    document_.set_attribute(to, at, measured(*said, *said->amount, work_.factor, {}));
  }
  words(yield, to);
}

std::string Figures::number_text(Ratio count, At at) const {
  const Ratio exact = count * work_.factor;
  if (exact.whole()) return exact.text();
  const Ratio near = base::round_to(exact, 1);
  const bool close = base::abs(near - exact) * 200 <= exact;
  const Ratio shown = close || at == At::spare ? near : Ratio(exact.floor());
  return shown < 1 && at != At::spare ? work_.text(base::round_to(exact, Ratio(1, 4))) : shown.text();
}

void Figures::words(Node yield, Node to) {
  const fiche::Attr words = document_.find(yield, At::words);
  if (words == fiche::none) return;
  work_.say("not-scaled", Severity::advice, document_.attribute_span(words),
            "the yield's words \"" + std::string(document_.attribute_value(words)) +
                "\" speak of the author's batch and were left out",
            "write them anew for this batch");
  document_.remove_attribute(to, At::words);
}

}  // namespace tamis::change
